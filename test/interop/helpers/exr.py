"""A map as numpy arrays, read by the OpenEXR library, and where its samples lie."""

import numpy as np
import OpenEXR


class Map:
    def __init__(self, path):
        with OpenEXR.File(str(path), separate_channels=True) as file:
            self.header = dict(file.header())
            self.planes = {name: channel.pixels for name, channel in file.channels().items()}
        (left, top), (right, bottom) = self.header["dataWindow"]
        (x0, y0), (x1, y1) = self.header["displayWindow"]
        self.left, self.top = int(left), int(top)
        self.columns, self.rows = int(right - left + 1), int(bottom - top + 1)
        self.width, self.height = int(x1 - x0 + 1), int(y1 - y0 + 1)

    @property
    def u(self):
        return self.planes["R"].astype(float)

    @property
    def v(self):
        return self.planes["G"].astype(float)

    def overscan(self):
        return max(self.columns / self.width, self.rows / self.height)

    def places(self):
        """Middles of the samples as parts of the frame, from its top left corner."""
        x = (np.arange(self.columns) + self.left + 0.5) / self.width
        y = (np.arange(self.rows) + self.top + 0.5) / self.height
        return np.meshgrid(x, y)

    def frame(self, values):
        """The part of a plane that lies on the frame."""
        return values[-self.top : -self.top + self.height, -self.left : -self.left + self.width]
