"""Pages over a catalogue, served: a Datasette plugin, so that the data can be browsed as data too."""
