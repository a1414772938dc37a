"""From the catalogue to an answer, as records."""
