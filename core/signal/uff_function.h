// Why: data set 58 of a universal file tells in eleven lines what one channel is: what kind of function, of
// what, against what, how many values in which form. This reads them and believes no count before the bytes
// behind it were seen. Units: as the file has them; `step` and `least` in those of the abscissa. Errors:
// Damaged, Invalid or Unsupported with "line L, column C". Source: Universal File Data Set 58, Function at
// Nodal DOF, revision 30-Jun-1999 (University of Cincinnati, Structural Dynamics Research Laboratory):
// records 1 to 6 and the layout of 58b read there, records 7 to 12 from memory.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/base/time.h"
#include "core/signal/uff_text.h"

namespace fettle {

inline constexpr int kUffGeneral = 0, kUffTimeResponse = 1;  // function types
inline constexpr int kUffDisplacement = 8, kUffVelocity = 11, kUffAcceleration = 12, kUffTime = 17;

struct UffAxis {
    int quantity = 0;  // 0 unknown; 8 displacement, 11 velocity, 12 acceleration, 17 time, 18 frequency
    std::string label, unit;
};

// How the values are written.
struct UffForm {
    bool binary = false, bigEndian = false;
    std::uint64_t bytes = 0;  // of the values, where binary
};

struct UffFunction {
    std::size_t set = 0;             // which data set 58 of the file, from 1
    std::array<std::size_t, 12> at;  // the line of each record, [1] to [11]
    UffForm form;
    std::string description;
    std::optional<Instant> date;  // in a zone the file does not name
    int type = 0;
    std::string entity;  // of the response; empty: none
    long long node = 0;
    int direction = 0;  // +-1 .. 3: X Y Z, +-4 .. 6 about them, 0 scalar
    bool isDouble = false, isComplex = false, isEven = true;
    std::uint64_t count = 0;
    double least = 0, step = 0;
    std::string stepAsPrinted;
    UffAxis abscissa, ordinate;
};

// The second line of a data set, after its opening mark: the number and, of 58b, the form.
struct UffKind {
    int number = 0;
    UffForm form;
};
Result<UffKind> readUffKind(const UffLines& lines, const std::string& file);

// Records 1 to 11; leaves `lines` at the first value.
Result<UffFunction> readUffFunction(UffLines& lines, const UffForm& form, const std::string& file);

const char* uffTypeName(int type);  // "frequency response"

}  // namespace fettle
