// One line, the words of a program: what is typed, and what is shown of what is kept, are the same words.
#include "core/exchange/command_words.h"

#include <gtest/gtest.h>

namespace fettle {

namespace {

using Words = std::vector<std::string>;

TEST(CommandWords, BlanksPartQuotesHold) {
    EXPECT_EQ(*commandWords("/usr/bin/pass show  mail ", "x"), (Words{"/usr/bin/pass", "show", "mail"}));
    EXPECT_EQ(*commandWords("\"/opt/my tools/pass\" \"\" \"a \\\"b\\\" \\\\c\" d\\e", "x"),
              (Words{"/opt/my tools/pass", "", "a \"b\" \\c", "d\\e"}));
    EXPECT_EQ(*commandWords(" [\"/bin/sh\", \"-c\", \"a b\"]", "x"), (Words{"/bin/sh", "-c", "a b"}));
    EXPECT_EQ(*commandWords("/bin/echo $(id) 'a b'", "x"), (Words{"/bin/echo", "$(id)", "'a", "b'"}))
        << "no shell reads it";
}

TEST(CommandWords, WhatIsNoLineOfWordsIsRefused) {
    for (const char* bad :
         {"", "  ", "/bin/a \"b", "/bin/a --x=\"a b\"", "/bin/a \"b\"c", "[]", "[1]", "[\"a\""}) {
        const auto words = commandWords(bad, "--command");
        ASSERT_FALSE(words) << bad;
        EXPECT_NE(words.error().sentence().find("--command"), std::string::npos) << bad;
    }
}

TEST(CommandWords, ComesBackAsItWas) {
    for (const Words& words :
         {Words{"/usr/bin/pass", "show", "mail"}, Words{"/opt/a b", "", "c\"d", "e\\f", "\t"},
          Words{"[odd", "\n", "\xc3\xbc ber"}})
        EXPECT_EQ(*commandWords(commandLine(words), "x"), words) << commandLine(words);
}

}  // namespace

}  // namespace fettle
