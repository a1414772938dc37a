"""An answer as text, chart, figure or page."""
