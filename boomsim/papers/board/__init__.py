"""After marking: what an examining board is told about questions, candidates, standard, markers."""
