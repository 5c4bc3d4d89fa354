"""Averages the weights of two exported networks, one of which was trained on from the other.

python3 mix.py A.onnx B.onnx OUT.onnx   (needs python3-onnx; .onnx.gz too)
After Wortsman et al., "Robust fine-tuning of zero-shot models", CVPR 2022.
"""

import sys

import onnx
from onnx import numpy_helper

import pack


def main():
    model, other = pack.loaded(sys.argv[1]), pack.loaded(sys.argv[2])
    others = {tensor.name: tensor for tensor in other.graph.initializer}
    for tensor in model.graph.initializer:
        if tensor.data_type == onnx.TensorProto.FLOAT:
            mean = (numpy_helper.to_array(tensor) + numpy_helper.to_array(others[tensor.name])) / 2
            tensor.CopyFrom(numpy_helper.from_array(mean, tensor.name))
    with open(sys.argv[3], "wb") as out:
        out.write(model.SerializeToString())


if __name__ == "__main__":
    main()
