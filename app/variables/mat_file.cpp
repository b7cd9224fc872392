// MAT files; the only user of matio.
#include <matio.h>

#include <cstring>
#include <memory>

#include "app/variables/variables.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {

struct CloseMat {
    void operator()(mat_t* file) const { Mat_Close(file); }
};
using MatFile = std::unique_ptr<mat_t, CloseMat>;
struct FreeVariable {
    void operator()(matvar_t* variable) const { Mat_VarFree(variable); }
};
using MatVariable = std::unique_ptr<matvar_t, FreeVariable>;

MatFile openMat() {
    Mat_LogInitFunc("fettle", [](int, char*) {});
    MatFile file(Mat_Open(kFilePath, MAT_ACC_RDONLY));
    openNoMore();
    if (!file) refuse("its library cannot open it as a MAT file");
    return file;
}

bool isNumeric(const matvar_t& v) {
    switch (v.class_type) {
        case MAT_C_DOUBLE:
        case MAT_C_SINGLE:
        case MAT_C_INT8:
        case MAT_C_UINT8:
        case MAT_C_INT16:
        case MAT_C_UINT16:
        case MAT_C_INT32:
        case MAT_C_UINT32:
        case MAT_C_INT64:
        case MAT_C_UINT64:
            return !v.isComplex;
        default:
            return false;
    }
}

// Nothing where a product does not fit.
std::optional<std::uint64_t> countOf(const matvar_t& v) {
    std::uint64_t count = 1;
    for (int d = 0; d < v.rank; ++d)
        if (__builtin_mul_overflow(count, std::uint64_t(v.dims[d]), &count)) return std::nullopt;
    return count;
}

template <class Number>
void append(const matvar_t& v, std::uint64_t count, std::vector<double>& numbers) {
    for (std::uint64_t i = 0; i < count; ++i) {
        Number number;
        std::memcpy(&number, static_cast<const char*>(v.data) + i * sizeof number, sizeof number);
        numbers.push_back(double(number));
    }
}

// Of a variable whose data was read; empty where they are not what was stated.
std::vector<double> numbersOf(const matvar_t& v, std::uint64_t count) {
    std::vector<double> numbers;
    if (!v.data || v.data_size < 1 || v.nbytes / std::size_t(v.data_size) < count) return numbers;
    numbers.reserve(std::size_t(count));
    switch (v.data_type) {
        case MAT_T_DOUBLE:
            append<double>(v, count, numbers);
            break;
        case MAT_T_SINGLE:
            append<float>(v, count, numbers);
            break;
        case MAT_T_INT8:
            append<std::int8_t>(v, count, numbers);
            break;
        case MAT_T_UINT8:
            append<std::uint8_t>(v, count, numbers);
            break;
        case MAT_T_INT16:
            append<std::int16_t>(v, count, numbers);
            break;
        case MAT_T_UINT16:
            append<std::uint16_t>(v, count, numbers);
            break;
        case MAT_T_INT32:
            append<std::int32_t>(v, count, numbers);
            break;
        case MAT_T_UINT32:
            append<std::uint32_t>(v, count, numbers);
            break;
        case MAT_T_INT64:
            append<std::int64_t>(v, count, numbers);
            break;
        case MAT_T_UINT64:
            append<std::uint64_t>(v, count, numbers);
            break;
        default:
            break;
    }
    return numbers;
}

std::string textOf(const matvar_t& v, std::uint64_t count) {
    if (!v.data || v.data_size < 1 || v.data_size > 2 || v.nbytes / std::size_t(v.data_size) < count)
        return "";
    std::string letters;
    for (std::uint64_t i = 0; i < count; ++i) {
        const char* at = static_cast<const char*>(v.data) + i * std::uint64_t(v.data_size);
        letters += v.data_size == 2 && at[1] != 0 ? '?' : at[0];
    }
    return asciiText(letters.data(), letters.size());
}

void addValue(mat_t* file, matvar_t& v, std::uint64_t count, Json& values) {
    if (isNumeric(v) && count == 1 && Mat_VarReadDataAll(file, &v) == 0) {
        const std::vector<double> numbers = numbersOf(v, 1);
        if (!numbers.empty()) values[v.name] = numbers[0];
    }
    if (v.class_type == MAT_C_CHAR && count > 0 && count <= kMostText && Mat_VarReadDataAll(file, &v) == 0)
        values[v.name] = textOf(v, count);
}

std::string nameOf(const matvar_t& v) {
    return v.name ? asciiText(v.name, std::strlen(v.name)) : "";
}

// The workspace of a function handle stands in the file as a variable without a name: passed over.
bool hasName(const matvar_t& v) {
    return v.name && *v.name && v.dims;
}

void addVariable(mat_t* file, matvar_t& v, Json& json) {
    const auto count = countOf(v);
    Json one{{"name", nameOf(v)}, {"shape", Json::array()}, {"real", isNumeric(v) && count}};
    for (int d = 0; d < v.rank; ++d)
        one["shape"].push_back(std::uint64_t(v.dims[d]));
    json["variables"].push_back(std::move(one));
    if (v.class_type == MAT_C_STRUCT || v.class_type == MAT_C_CELL || v.class_type == MAT_C_OBJECT)
        json["notes"].push_back("\"" + nameOf(v) + "\" is a structure or list and is not looked into");
    if (v.isComplex) json["notes"].push_back("\"" + nameOf(v) + "\" holds complex numbers");
    if (count) addValue(file, v, *count, json["values"]);
}

}  // namespace

void listMat() {
    const MatFile file = openMat();
    if (!file) return;
    Json json{{"first_fastest", true},
              {"variables", Json::array()},
              {"values", Json::object()},
              {"notes", Json::array()}};
    while (MatVariable v{Mat_VarReadNextInfo(file.get())}) {
        if (json["variables"].size() >= kMostVariables)
            return refuse("holds more variables than are looked through");
        if (hasName(*v)) addVariable(file.get(), *v, json);
    }
    answer(json);
}

void readMatVariable(std::size_t place) {
    const MatFile file = openMat();
    if (!file) return;
    std::size_t at = 0;
    while (MatVariable v{Mat_VarReadNextInfo(file.get())}) {
        if (!hasName(*v) || at++ != place) continue;
        const auto count = countOf(*v);
        if (!isNumeric(*v) || !count || *count > kMostSamples || Mat_VarReadDataAll(file.get(), v.get()) != 0)
            break;
        return answer(Json::object(), numbersOf(*v, *count));
    }
    refuse("its library cannot read the numbers of a variable");
}

}  // namespace fettle
