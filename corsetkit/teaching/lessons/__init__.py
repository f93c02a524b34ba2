"""What the cells of each lesson show: one module a lesson, named by the lesson's word."""
