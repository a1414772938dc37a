"""drillpath: from a fault seen in a lift to an ordered chain of drills that ends in the full lift."""

__version__ = "0.1.0"
__all__ = ["__version__"]
