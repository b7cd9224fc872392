#include "core/store/schema.h"

#include <string>

namespace fettle {

namespace {
// A string a concern; the step runs them in this order. Times and texts as in schema.cpp.
constexpr const char* kSpectra = R"sql(
)sql";

constexpr const char* kRetention = R"sql(
)sql";

constexpr const char* kAlerts = R"sql(
)sql";

constexpr const char* kReExamination = R"sql(
)sql";
}  // namespace

const char* fourthStep() {
    static const std::string text = std::string(kSpectra) + kRetention + kAlerts + kReExamination;
    return text.c_str();
}

}  // namespace fettle
