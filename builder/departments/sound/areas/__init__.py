"""What reaches the ears of each audience area: sources, fields, sight, edges, maps."""
