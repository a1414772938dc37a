"""Figures: positions, faults and drills drawn from joint angles."""
