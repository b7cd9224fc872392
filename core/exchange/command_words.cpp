#include "core/exchange/command_words.h"

#include <cctype>
#include <iomanip>
#include <sstream>

#include "core/base/json_object.h"
#include "core/base/text.h"

namespace fettle {

namespace {

tl::unexpected<Error> no(const std::string& place, const std::string& rule) {
    return fail(ErrorKind::Invalid, place, "", rule);
}

Result<std::vector<std::string>> listWords(const std::string& text, const std::string& place) {
    const auto json = parseJson(text, place);
    if (!json) return fail(json.error());
    std::vector<std::string> words;
    for (const Json& word : *json)
        if (word.is_string()) words.push_back(word.get<std::string>());
    if (words.size() != json->size() || words.empty())
        return no(place, "is a JSON list of texts, as in [\"/usr/local/bin/siren\", \"--long\"]");
    return words;
}

bool isPlain(const std::string& word) {
    return !word.empty() && word.find_first_of(" \t\n\v\f\r\"\\") == word.npos && word[0] != '[';
}

}  // namespace

Result<std::vector<std::string>> commandWords(const std::string& text, const std::string& place) {
    if (trimmed(text).starts_with('[')) return listWords(text, place);
    std::istringstream line(text);
    line.imbue(std::locale::classic());
    std::vector<std::string> words;
    while (line >> std::ws && line.peek() != std::istringstream::traits_type::eof()) {
        const bool quoted = line.peek() == '"';
        std::string word;
        if (!(line >> std::quoted(word))) return no(place, "has a quotation mark without its partner");
        const int after = line.peek();
        const bool ends = after == std::istringstream::traits_type::eof() || std::isspace(after);
        if (!ends || (!quoted && word.find('"') != word.npos))
            return no(place, "has a quotation mark within a word: put the whole word between two");
        words.push_back(std::move(word));
    }
    if (words.empty()) return no(place, "names no program");
    return words;
}

std::string commandLine(const std::vector<std::string>& words) {
    std::ostringstream line;
    line.imbue(std::locale::classic());
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) line << ' ';
        if (isPlain(words[i]))
            line << words[i];
        else
            line << std::quoted(words[i]);
    }
    return line.str();
}

}  // namespace fettle
