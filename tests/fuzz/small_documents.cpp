// Short texts in columns of the fleet file: lists of names, what a recording that is asked for has to bring.
#include "core/base/time.h"
#include "core/fleet/ask_spec.h"
#include "core/store/text_list.h"
#include "tests/fuzz/target.h"

namespace fettle::fuzz {
namespace {

bool smallDocuments(const std::string& bytes) {
    const auto texts = fromJsonText(bytes);
    require(fromJsonText(toJsonText(texts)) == texts, "a list of texts comes back");
    const auto spec = askSpecFrom(bytes, "ask");
    if (spec) {
        const auto again = askSpecFrom(toText(*spec), "ask");
        require(again && *again == *spec, "what is asked for comes back");
        require(!wordsOf(*spec).empty(), "it can be told");
    }
    const auto time = parseUtc(bytes);
    if (time) require(parseUtc(formatUtc(*time)) == time, "a time comes back");
    return spec || time || !texts.empty();
}

const Listed kSmallDocuments("small_documents", smallDocuments);

}  // namespace
}  // namespace fettle::fuzz
