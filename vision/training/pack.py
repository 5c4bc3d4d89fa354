"""Rounds an exported network's weights to 16 bits of a float32 and compresses the file.

python3 pack.py line_reader.onnx line_reader.onnx.gz   (needs python3-onnx)
"""

import gzip
import sys

import numpy as np
import onnx
from onnx import numpy_helper


def loaded(path):
    """An exported network, compressed or not."""
    with (gzip.open if path.endswith(".gz") else open)(path, "rb") as file:
        return onnx.load_model_from_string(file.read())


def rounded(values):
    """float32 with the low 16 bits zero, to the nearest, halves to even."""
    bits = np.ascontiguousarray(values, np.float32).view(np.uint32)
    return ((bits + 0x7FFF + ((bits >> 16) & 1)) & 0xFFFF0000).view(np.float32)


def main():
    source, packed = sys.argv[1:3]
    model = loaded(source)
    for tensor in model.graph.initializer:
        if tensor.data_type == onnx.TensorProto.FLOAT and len(tensor.dims) > 1:
            tensor.CopyFrom(numpy_helper.from_array(rounded(numpy_helper.to_array(tensor)), tensor.name))
    with open(packed, "wb") as file, gzip.GzipFile("", "wb", 9, file, 0) as out:
        out.write(model.SerializeToString())


if __name__ == "__main__":
    main()
