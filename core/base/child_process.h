// Why: what the places that start another program share: a descriptor that closes itself, bytes handed over
// as a file in memory (nothing to wait for, and no signal where the child does not read them), and words as
// posix_spawn wants them. Errors: errno, a descriptor below 0.
#pragma once

#include <string>
#include <vector>

namespace fettle {

class Descriptor {
  public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept;
    Descriptor& operator=(Descriptor&& other) noexcept;
    ~Descriptor() { reset(); }
    void reset();
    int get() const { return number_; }
    // The same at a number that is not handed over to a child.
    Descriptor above() const;

  private:
    int number_;
};

// Holds the bytes and is read from its beginning.
Descriptor memoryFile(const std::string& bytes);

// Valid as long as the texts are; ends with null.
std::vector<char*> argumentPointers(std::vector<std::string>& texts);

}  // namespace fettle
