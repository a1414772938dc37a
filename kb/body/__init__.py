"""The body behind every figure: segments, joint angles, coordinates, balance and what a position asks."""
