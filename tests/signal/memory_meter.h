// Why: a header that lies must not make a reader ask for memory. Counts what operator new hands out in this
// program; what C libraries take for themselves is not seen.
#pragma once

#include <cstddef>

namespace fettle {

class MemoryMeter {
  public:
    MemoryMeter();                  // begins to count
    std::size_t peakBytes() const;  // most held at one time since, beyond what was held then

  private:
    std::size_t before_;
};

}  // namespace fettle
