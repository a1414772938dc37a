"""From Markdown entries to the catalogue and the graphs."""
