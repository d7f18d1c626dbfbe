"""What follows: geometry, statics, deflection, stress, plates, stability. SI, radians, arrays."""
