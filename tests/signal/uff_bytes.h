// Why: universal files made by hand, column by column, so that the reader is not tested against the writer.
// Source: Universal File Data Set 58, Function at Nodal DOF, revision 30-Jun-1999 (University of Cincinnati,
// Structural Dynamics Research Laboratory): records 1 to 6 and the layout of 58b; records 7 to 12 from
// memory.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace fettle::bytes {

struct Uff {
    std::string description = "NONE", date = "04-MAY-26 06:20:00", entity = "NONE", unit = "m/s2";
    int type = 1, node = 1, direction = 1, ordinate = 4, quantity = 12, spacing = 1, abscissa = 17;
    long long count = 0;  // 0: as many as there are
    double least = 0, step = 7.8125e-5;
};

inline const std::string kUffMark = "    -1\n";

std::string uffHead(const Uff& uff, std::size_t values);  // records 1 to 11
std::string uffColumns(const std::vector<double>& values, bool isDouble);
std::string uff(const Uff& uff, const std::vector<double>& values);  // a data set 58, marks and all
// A data set 58b of IEEE 754 numbers, double for ordinate 4 and single for 2.
std::string uff58b(const Uff& uff, const std::vector<double>& values, bool bigEndian = false);

}  // namespace fettle::bytes
