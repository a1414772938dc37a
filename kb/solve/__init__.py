"""Answers that a constraint solver proves; imported only where one is installed and asked for."""
