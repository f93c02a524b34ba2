# Under nbval a lesson shows its stored drawing instead of sliders; the kernels inherit the variable.
import os

os.environ["CORSETKIT_STORED"] = "1"
