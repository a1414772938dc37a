"""Answers as pages: one set of templates and one renderer for what is served and what opens from a folder."""
