// Why: numbers must read and print alike where a comma is the decimal mark. Sets such a locale for C++
// streams, which is always at hand, and for C where the machine has one installed; puts the old ones back at
// the end.
#pragma once

#include <clocale>
#include <locale>
#include <string>

namespace fettle {

class CommaLocale {
  public:
    CommaLocale() : oldC_(std::setlocale(LC_ALL, nullptr)) {
        old_ = std::locale::global(std::locale(std::locale::classic(), new Comma));
        for (const char* name : {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "fr_FR.utf8", "nl_NL.UTF-8"})
            if (std::setlocale(LC_ALL, name)) break;
    }
    ~CommaLocale() {
        std::locale::global(old_);
        std::setlocale(LC_ALL, oldC_.c_str());
    }
    CommaLocale(const CommaLocale&) = delete;
    CommaLocale& operator=(const CommaLocale&) = delete;

  private:
    struct Comma : std::numpunct<char> {
        char do_decimal_point() const override { return ','; }
        char do_thousands_sep() const override { return '.'; }
        std::string do_grouping() const override { return "\3"; }
    };
    std::string oldC_;
    std::locale old_;
};

}  // namespace fettle
