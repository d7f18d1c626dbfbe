"""Cross-sections: flat plates, section properties, stress, plate buckling, patch loading."""
