// HDF5 files; the only user of that library. Links out of the file are not followed, and data that stand in
// other files are not read.
#include <hdf5.h>

#include <cstring>
#include <optional>
#include <utility>

#include "app/variables/variables.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {

// A handle of the library with the call that gives it back.
class Handle {
  public:
    Handle(hid_t id, herr_t (*close)(hid_t)) : id_(id), close_(close) {}
    Handle(Handle&& other) noexcept : id_(std::exchange(other.id_, H5I_INVALID_HID)), close_(other.close_) {}
    Handle& operator=(Handle&&) = delete;
    ~Handle() {
        if (id_ >= 0) close_(id_);
    }
    explicit operator bool() const { return id_ >= 0; }
    hid_t get() const { return id_; }

  private:
    hid_t id_;
    herr_t (*close_)(hid_t);
};

// The library looks for the real path of what it opens, which memory has not: it is given the bytes.
Handle openHdf5() {
    H5Eset_auto2(H5E_DEFAULT, nullptr, nullptr);
    H5PLset_loading_state(0);
    std::string bytes = fileBytes();
    openNoMore();
    const Handle way(H5Pcreate(H5P_FILE_ACCESS), H5Pclose);
    constexpr std::size_t pieces = std::size_t(1) << 16;
    const bool set = H5Pset_fapl_core(way.get(), pieces, 0) >= 0 &&
                     H5Pset_file_image(way.get(), bytes.data(), bytes.size()) >= 0;
    bytes = {};
    Handle file(set ? H5Fopen("file", H5F_ACC_RDONLY, way.get()) : H5I_INVALID_HID, H5Fclose);
    if (!file) refuse("its library cannot open it as an HDF5 file: not one, or it breaks off");
    return file;
}

bool isReal(hid_t type) {
    const H5T_class_t kind = H5Tget_class(type);
    return kind == H5T_FLOAT || kind == H5T_INTEGER;
}

std::optional<std::vector<std::uint64_t>> shapeOf(hid_t space) {
    const int rank = H5Sget_simple_extent_ndims(space);
    if (rank < 0 || rank > H5S_MAX_RANK || H5Sget_simple_extent_type(space) == H5S_NULL) return std::nullopt;
    std::vector<hsize_t> sizes(std::size_t(rank), 0);
    if (rank > 0 && H5Sget_simple_extent_dims(space, sizes.data(), nullptr) < 0) return std::nullopt;
    return std::vector<std::uint64_t>(sizes.begin(), sizes.end());
}

std::optional<std::uint64_t> countOf(const std::vector<std::uint64_t>& shape) {
    std::uint64_t count = 1;
    for (const std::uint64_t size : shape)
        if (__builtin_mul_overflow(count, size, &count)) return std::nullopt;
    return count;
}

// One value of an attribute or data set: `read` fills memory of the given type.
template <class Read>
std::optional<Json> valueOf(hid_t type, const std::vector<std::uint64_t>& shape, Read read) {
    if (countOf(shape) != 1) return std::nullopt;
    if (isReal(type)) {
        double number = 0;
        return read(H5T_NATIVE_DOUBLE, &number) >= 0 ? std::optional<Json>(number) : std::nullopt;
    }
    if (H5Tget_class(type) != H5T_STRING) return std::nullopt;
    if (H5Tis_variable_str(type) > 0) {
        char* letters = nullptr;
        if (read(type, &letters) < 0 || !letters) return std::nullopt;
        Json text = asciiText(letters, strnlen(letters, kMostText));
        H5free_memory(letters);
        return text;
    }
    const std::size_t size = H5Tget_size(type);
    if (size == 0 || size > kMostText) return std::nullopt;
    std::string letters(size, '\0');
    if (read(type, letters.data()) < 0) return std::nullopt;
    return Json(asciiText(letters.data(), letters.size()));
}

herr_t addAttribute(hid_t object, const char* name, const H5A_info_t*, void* into) {
    Json& values = *static_cast<Json*>(into);
    if (values.size() >= kMostVariables) return 1;
    const Handle attribute(H5Aopen(object, name, H5P_DEFAULT), H5Aclose);
    if (!attribute) return 0;
    const Handle type(H5Aget_type(attribute.get()), H5Tclose), space(H5Aget_space(attribute.get()), H5Sclose);
    if (!type || !space) return 0;
    const auto shape = shapeOf(space.get());
    if (!shape) return 0;
    const auto value = valueOf(type.get(), *shape,
                               [&](hid_t memory, void* to) { return H5Aread(attribute.get(), memory, to); });
    if (value) values[asciiText(name, std::strlen(name))] = *value;
    return 0;
}

Json attributesOf(hid_t object) {
    Json values = Json::object();
    hsize_t at = 0;
    H5Aiterate2(object, H5_INDEX_NAME, H5_ITER_INC, &at, addAttribute, &values);
    return values;
}

bool standsElsewhere(hid_t data) {
    const Handle how(H5Dget_create_plist(data), H5Pclose);
    return !how || H5Pget_external_count(how.get()) != 0 || H5Pget_layout(how.get()) == H5D_VIRTUAL;
}

// Every data set in the order of names; `use` gets its place, and says whether to go on.
struct Walk {
    void (*use)(Walk& walk, hid_t data, const char* name);
    Json json = Json::object();
    std::size_t wanted = 0, at = 0;
    bool tooMany = false, done = false;
    std::vector<double> numbers;
};

herr_t visit(hid_t root, const char* name, const H5O_info_t* info, void* user) {
    Walk& walk = *static_cast<Walk*>(user);
    if (info->type != H5O_TYPE_DATASET) return 0;
    if (walk.at >= kMostVariables) {
        walk.tooMany = true;
        return 1;
    }
    const Handle data(H5Dopen2(root, name, H5P_DEFAULT), H5Dclose);
    if (data) walk.use(walk, data.get(), name);
    ++walk.at;
    return walk.done ? 1 : 0;
}

void walkAll(hid_t file, Walk& walk) {
    H5Ovisit2(file, H5_INDEX_NAME, H5_ITER_INC, visit, &walk, H5O_INFO_BASIC);
}

void addDataSet(Walk& walk, hid_t data, const char* path) {
    const std::string name = asciiText(path, std::strlen(path));
    const Handle type(H5Dget_type(data), H5Tclose), space(H5Dget_space(data), H5Sclose);
    const auto shape = type && space ? shapeOf(space.get()) : std::nullopt;
    const bool elsewhere = standsElsewhere(data);
    if (elsewhere) walk.json["notes"].push_back("\"" + name + "\" stands in another file and is not read");
    Json attributes = attributesOf(data);
    const bool letters = attributes.contains("MATLAB_class") && attributes["MATLAB_class"] == "char";
    const bool real = shape && !elsewhere && !letters && isReal(type.get()) && countOf(*shape);
    Json one{{"name", name.empty() ? "?" : name},
             {"shape", Json::array()},
             {"real", real},
             {"attributes", std::move(attributes)}};
    if (shape)
        for (const std::uint64_t size : *shape)
            one["shape"].push_back(size);
    walk.json["variables"].push_back(std::move(one));
    if (!shape || elsewhere) return;
    const auto value = valueOf(type.get(), *shape, [&](hid_t memory, void* to) {
        return H5Dread(data, memory, H5S_ALL, H5S_ALL, H5P_DEFAULT, to);
    });
    if (value) walk.json["values"][name] = *value;
}

void readDataSet(Walk& walk, hid_t data, const char*) {
    if (walk.at != walk.wanted) return;
    walk.done = true;
    const Handle type(H5Dget_type(data), H5Tclose), space(H5Dget_space(data), H5Sclose);
    if (!type || !space || !isReal(type.get()) || standsElsewhere(data)) return;
    const auto shape = shapeOf(space.get());
    const auto count = shape ? countOf(*shape) : std::nullopt;
    if (!count || *count == 0 || *count > kMostSamples) return;
    walk.numbers.resize(std::size_t(*count));
    if (H5Dread(data, H5T_NATIVE_DOUBLE, H5S_ALL, H5S_ALL, H5P_DEFAULT, walk.numbers.data()) < 0)
        walk.numbers.clear();
}

}  // namespace

void listHdf5() {
    const Handle file = openHdf5();
    if (!file) return;
    Walk walk{addDataSet, {}, 0, 0, false, false, {}};
    walk.json = {{"first_fastest", false},
                 {"variables", Json::array()},
                 {"values", attributesOf(file.get())},
                 {"notes", Json::array()}};
    walkAll(file.get(), walk);
    if (walk.tooMany) return refuse("holds more data sets than are looked through");
    answer(walk.json);
}

void readHdf5Variable(std::size_t place) {
    const Handle file = openHdf5();
    if (!file) return;
    Walk walk{readDataSet, {}, place, 0, false, false, {}};
    walkAll(file.get(), walk);
    if (walk.numbers.empty()) return refuse("its library cannot read the numbers of a data set");
    answer(Json::object(), walk.numbers);
}

}  // namespace fettle
