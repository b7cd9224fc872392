// Why: what a stranger could write where a name or a note is asked for: markup, formulas, orders to a
// terminal or a database, ways out of a folder, letters that are not seen, and too much of everything. All
// are valid UTF-8: a JSON document cannot carry anything else.
#pragma once

#include <string>
#include <vector>

namespace fettle {

inline std::vector<std::string> hostileTexts() {
    using namespace std::string_literals;
    return {"<b>bold</b><img src=\"file:///etc/hostname\">&amp;<a href=\"x\">y</a>"s,
            "=HYPERLINK(\"http://x\",\"y\")"s,
            "+cmd|' /C calc'!A0"s,
            "-1"s,
            "@SUM(1)"s,
            "\uFF1D1+1"s,
            "a\nb\tc\rd"s,
            "before\0after"s,
            "\u202Efdp.exe\u200B"s,
            "../../x"s,
            "\\\\host\\share\\x"s,
            "\x1b]0;title\x07\x1b[31mred\x7f\u009b31m"s,
            "%1 %2 %n %s"s,
            "'); DROP TABLE machine;--"s,
            " "s,
            std::string(10000, 'x'),
            "\"; ,\"\""s};
}

}  // namespace fettle
