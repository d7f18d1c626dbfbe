"""What each lesson shows after the guess: views, a live picture, exercises."""
