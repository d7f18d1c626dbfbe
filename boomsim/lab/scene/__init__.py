"""What is chosen in the explorer: the scene, its changes, its checks, its files."""
