"""What differs between two libraries: entries, the graph, and the answers to every default question."""
