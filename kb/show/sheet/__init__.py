"""Sheets: one page of HTML for a chain or a session, for a phone and, printed, for A4 or letter paper."""
