"""Papers as Moodle XML: questions with units and tolerances for a question bank."""
