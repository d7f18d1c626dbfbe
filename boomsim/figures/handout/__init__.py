"""Line drawings for handouts and lessons, with room to draw in."""
