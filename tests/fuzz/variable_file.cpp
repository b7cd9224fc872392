// Whole MAT and HDF5 files: their libraries run contained, so whatever they do on one is an answer or an
// error here.
#include "core/signal/variable_file.h"

#include "core/base/text.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool variableFile(const std::string& bytes) {
    const bool mat = bytes.starts_with("MATLAB");
    const auto recording = mat ? readMat(bytes, "a.mat") : readHdf5(bytes, "a.h5");
    if (recording) {
        requireSound(*recording);
        return true;
    }
    require(!recording.error().rule.empty() && isUtf8(recording.error().rule), "a refusal says why");
    return false;
}

const Listed kVariableFile("variable_file", variableFile);

}  // namespace
}  // namespace fettle::fuzz
