#include "tests/signal/variable_bytes.h"

#include <gtest/gtest.h>
#include <hdf5.h>
#include <matio.h>

#include "core/base/file_system.h"
#include "tests/base/scratch_folder.h"

namespace fettle::bytes {

namespace {

std::string contents(const std::string& path) {
    const auto bytes = RealFileSystem().read(path);
    EXPECT_TRUE(bytes) << path;
    return bytes.value_or("");
}

std::string written(const std::vector<MatVariable>& variables, mat_ft version,
                    matio_compression compression) {
    const ScratchFolder folder;
    const std::string path = folder / "a.mat";
    mat_t* file = Mat_CreateVer(path.c_str(), "MATLAB 5.0 MAT-file, made by a test", version);
    EXPECT_NE(file, nullptr);
    for (const MatVariable& one : variables) {
        std::size_t shape[2] = {one.numbers.size(), 1};
        if (!one.shape.empty()) shape[0] = one.shape[0], shape[1] = one.shape[1];
        std::vector<double> numbers = one.numbers;
        matvar_t* variable =
            Mat_VarCreate(one.name.c_str(), MAT_C_DOUBLE, MAT_T_DOUBLE, 2, shape, numbers.data(), 0);
        EXPECT_EQ(Mat_VarWrite(file, variable, compression), 0);
        Mat_VarFree(variable);
    }
    Mat_Close(file);
    return contents(path);
}

void addText(hid_t object, const std::string& name, const std::string& text) {
    const hid_t type = H5Tcopy(H5T_C_S1), space = H5Screate(H5S_SCALAR);
    H5Tset_size(type, text.size() + 1);
    const hid_t attribute = H5Acreate2(object, name.c_str(), type, space, H5P_DEFAULT, H5P_DEFAULT);
    H5Awrite(attribute, type, text.c_str());
    H5Aclose(attribute);
    H5Sclose(space);
    H5Tclose(type);
}

void addNumber(hid_t object, const std::string& name, double number) {
    const hid_t space = H5Screate(H5S_SCALAR);
    const hid_t attribute = H5Acreate2(object, name.c_str(), H5T_IEEE_F64LE, space, H5P_DEFAULT, H5P_DEFAULT);
    H5Awrite(attribute, H5T_NATIVE_DOUBLE, &number);
    H5Aclose(attribute);
    H5Sclose(space);
}

void addVariable(hid_t file, const Hdf5Variable& one) {
    std::vector<hsize_t> shape(one.shape.begin(), one.shape.end());
    if (shape.empty()) shape.push_back(one.numbers.size());
    const hid_t space = H5Screate_simple(int(shape.size()), shape.data(), nullptr);
    const hid_t way = H5Pcreate(H5P_LINK_CREATE);
    H5Pset_create_intermediate_group(way, 1);
    const hid_t data =
        H5Dcreate2(file, one.name.c_str(), H5T_IEEE_F64LE, space, way, H5P_DEFAULT, H5P_DEFAULT);
    EXPECT_GE(H5Dwrite(data, H5T_NATIVE_DOUBLE, H5S_ALL, H5S_ALL, H5P_DEFAULT, one.numbers.data()), 0);
    for (const auto& [name, text] : one.texts)
        addText(data, name, text);
    for (const auto& [name, number] : one.values)
        addNumber(data, name, number);
    H5Dclose(data);
    H5Pclose(way);
    H5Sclose(space);
}

}  // namespace

std::string mat(const std::vector<MatVariable>& variables, bool compressed) {
    return written(variables, MAT_FT_MAT5, compressed ? MAT_COMPRESSION_ZLIB : MAT_COMPRESSION_NONE);
}

std::string mat73(const std::vector<MatVariable>& variables) {
    std::string bytes = written(variables, MAT_FT_MAT73, MAT_COMPRESSION_NONE);
    const std::string head = "MATLAB 7.3 MAT-file";
    return bytes.size() > head.size() ? bytes.replace(0, head.size(), head) : bytes;
}

std::string hdf5(const Hdf5File& made) {
    const ScratchFolder folder;
    const std::string path = folder / "a.h5";
    const hid_t file = H5Fcreate(path.c_str(), H5F_ACC_TRUNC, H5P_DEFAULT, H5P_DEFAULT);
    for (const Hdf5Variable& one : made.variables)
        addVariable(file, one);
    for (const auto& [name, text] : made.texts)
        addText(file, name, text);
    for (const auto& [name, number] : made.values)
        addNumber(file, name, number);
    H5Fclose(file);
    return contents(path);
}

std::string hdf5Elsewhere() {
    const ScratchFolder folder;
    const std::string path = folder / "a.h5";
    const hid_t file = H5Fcreate(path.c_str(), H5F_ACC_TRUNC, H5P_DEFAULT, H5P_DEFAULT);
    const hsize_t count = 64;
    const hid_t space = H5Screate_simple(1, &count, nullptr), how = H5Pcreate(H5P_DATASET_CREATE);
    H5Pset_external(how, "/etc/passwd", 0, count * 8);
    const hid_t data = H5Dcreate2(file, "x", H5T_IEEE_F64LE, space, H5P_DEFAULT, how, H5P_DEFAULT);
    EXPECT_GE(data, 0);
    H5Dclose(data);
    H5Pclose(how);
    H5Sclose(space);
    H5Fclose(file);
    return contents(path);
}

}  // namespace fettle::bytes
