#include "core/base/json_object.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/base/comma_locale.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

Error parseError(const std::string& text) {
    const auto json = parseJson(text, "m.json");
    return json ? Error{} : json.error();
}

TEST(ParseJson, TakesJsonAndKeepsTheOrderOfKeys) {
    const auto json = parseJson("\xef\xbb\xbf{ \"b\": 1, \"a\": [true, null, \"\\u00b5\"] }\n", "m.json");
    ASSERT_TRUE(json);
    EXPECT_EQ(json->dump(), "{\"b\":1,\"a\":[true,null,\"\xc2\xb5\"]}");
}

TEST(ParseJson, NamesTheByteWhereJsonEnds) {
    EXPECT_EQ(parseError("").place, "byte 0");
    EXPECT_EQ(parseError(" \n").kind, ErrorKind::Damaged);
    EXPECT_EQ(parseError("{ \"a\": 1, }").place, "byte 11");  // the brace where a key is due, counted from 1
    for (const char* text : {"{", "{}x", "{} {}", "nul", "{\"a\":NaN}", "{\"a\":Infinity}", "{\"a\":1e999}",
                             "{\"a\":01}", "{'a':1}", "{\"a\":\"\xb5\"}", "[1,2", "\"\\ud800\""}) {
        const Error error = parseError(text);
        EXPECT_EQ(error.kind, ErrorKind::Damaged) << text;
        EXPECT_EQ(error.file, "m.json") << text;
        EXPECT_THAT(error.place, testing::MatchesRegex("byte [0-9]+")) << text;
        EXPECT_FALSE(error.rule.empty()) << text;
    }
}

TEST(ParseJson, SaysWhenANumberIsTooLarge) {
    EXPECT_THAT(parseError("[1, 1e999]").rule, HasSubstr("too large"));
}

TEST(ParseJson, RefusesEndlessNesting) {
    EXPECT_TRUE(parseJson(std::string(64, '[') + std::string(64, ']'), "m.json"));
    EXPECT_EQ(parseError(std::string(65, '[') + std::string(65, ']')).kind, ErrorKind::Invalid);
    EXPECT_EQ(parseError(std::string(1000000, '[')).kind, ErrorKind::Invalid);
    EXPECT_TRUE(parseJson("\"" + std::string(100, '[') + "\"", "m.json"));
}

TEST(ParseJson, RefusesAKeyGivenTwice) {
    const Error error = parseError(R"({"points": [{"id": "a"}, {"id": "b", "at": 1, "id": "c"}]})");
    EXPECT_EQ(error.place, "/points/1/id");
    EXPECT_EQ(error.rule, "is given twice");
    EXPECT_TRUE(parseJson(R"({"a": {"id": 1}, "b": {"id": 1}})", "m.json"));
}

TEST(ParseJson, IsTheSameUnderACommaLocale) {
    const CommaLocale comma;
    EXPECT_EQ(parseJson("[1483.25]", "m.json").value()[0].get<double>(), 1483.25);
}

// Reads one document through `ask` and gives back what was reported.
template <class Ask>
JsonReport reportOf(const std::string& text, Ask ask) {
    JsonReport report;
    report.file = "m.json";
    const Json json = parseJson(text, report.file).value();
    {
        JsonObject object(json, "", report);
        ask(object);
    }
    return report;
}

TEST(JsonObject, ReadsEveryKind) {
    const auto report = reportOf(
        R"({"t": "x", "n": 1.5, "i": 4, "b": true, "ns": [1, 2], "ts": ["a", "b"], "w": "yes", "l": [{}, {}], "o": {}})",
        [](JsonObject& object) {
            EXPECT_EQ(object.text("t", true), "x");
            EXPECT_EQ(object.number("n", 0, 2), 1.5);
            EXPECT_EQ(object.integer("i", 0, 10), 4);
            EXPECT_EQ(object.boolean("b"), true);
            EXPECT_THAT(object.numbers("ns", 2, 0, 9), ElementsAre(1, 2));
            EXPECT_THAT(object.texts("ts"), ElementsAre("a", "b"));
            EXPECT_EQ(object.word("w", {"yes", "no"}), "yes");
            EXPECT_EQ(object.list("l").size(), 2u);
            EXPECT_TRUE(object.raw("o").is_object());
        });
    EXPECT_FALSE(report.error);
    EXPECT_TRUE(report.warnings.empty());
}

TEST(JsonObject, AbsentAndNullAreTheSame) {
    const auto report = reportOf(R"({"a": null})", [](JsonObject& object) {
        EXPECT_FALSE(object.has("a"));
        EXPECT_FALSE(object.number("a", 0, 1));
        EXPECT_FALSE(object.number("b", 0, 1));
        EXPECT_EQ(object.text("a"), "");
        EXPECT_FALSE(object.boolean("b"));
        EXPECT_TRUE(object.raw("a").is_null());
        EXPECT_TRUE(object.list("b").empty());
    });
    EXPECT_FALSE(report.error);
    EXPECT_TRUE(report.warnings.empty());
}

struct Wrong {
    const char* text;
    void (*ask)(JsonObject&);
    const char* rulePart;
};

TEST(JsonObject, ReportsWrongKindsWithTheirPlace) {
    const Wrong wrongs[] = {
        {"{}", [](JsonObject& o) { o.text("k", true); }, "required"},
        {R"({"k": null})", [](JsonObject& o) { o.number("k", 0, 1, true); }, "required"},
        {R"({"k": " "})", [](JsonObject& o) { o.text("k", true); }, "empty"},
        {R"({"k": 1})", [](JsonObject& o) { o.text("k"); }, "a text"},
        {R"({"k": "1"})", [](JsonObject& o) { o.number("k", 0, 1); }, "a number"},
        {R"({"k": true})", [](JsonObject& o) { o.number("k", 0, 1); }, "a number"},
        {R"({"k": 1.5})", [](JsonObject& o) { o.number("k", 0, 1); }, "from 0 to 1"},
        {R"({"k": -1e300})", [](JsonObject& o) { o.number("k", 0, 1); }, "from 0 to 1"},
        {R"({"k": 1.5})", [](JsonObject& o) { o.integer("k", 0, 9); }, "whole"},
        {R"({"k": 4294967296})", [](JsonObject& o) { o.integer("k", 0, 9); }, "from 0 to 9"},
        {R"({"k": 1})", [](JsonObject& o) { o.boolean("k"); }, "true or false"},
        {R"({"k": [1]})", [](JsonObject& o) { o.numbers("k", 2, 0, 9); }, "list of 2"},
        {R"({"k": [1, "2"]})", [](JsonObject& o) { o.numbers("k", 2, 0, 9); }, "list of 2"},
        {R"({"k": [1, 10]})", [](JsonObject& o) { o.numbers("k", 2, 0, 9); }, "from 0 to 9"},
        {R"({"k": ["a", 1]})", [](JsonObject& o) { o.texts("k"); }, "list of texts"},
        {R"({"k": "maybe"})",
         [](JsonObject& o) {
             o.word("k", {"yes", "no"});
         },
         "yes, no"},
        {R"({"k": {}})", [](JsonObject& o) { o.list("k"); }, "a list"},
        {R"({"k": 3})", [](JsonObject& o) { JsonObject(o.raw("k"), o.place("k"), o.report()); },
         "an object"}};
    for (const Wrong& wrong : wrongs) {
        SCOPED_TRACE(wrong.text);
        const auto report = reportOf(wrong.text, wrong.ask);
        ASSERT_TRUE(report.error);
        EXPECT_EQ(report.error->kind, ErrorKind::Invalid);
        EXPECT_EQ(report.error->file, "m.json");
        EXPECT_EQ(report.error->place, "/k");
        EXPECT_THAT(report.error->rule, HasSubstr(wrong.rulePart));
    }
}

TEST(JsonObject, KeepsTheFirstErrorOnly) {
    const auto report = reportOf(R"({"a": 1, "b": 2})", [](JsonObject& object) {
        object.text("b");
        object.text("a");
    });
    EXPECT_EQ(report.error->place, "/b");
}

TEST(JsonObject, WarnsOfKeysNobodyAskedFor) {
    const auto report =
        reportOf(R"({"known": 1, "odd\nkey": 2, "inner": {"deep": 3}})", [](JsonObject& object) {
            object.number("known", 0, 9);
            JsonObject inner(object.raw("inner"), object.place("inner"), object.report());
        });
    EXPECT_FALSE(report.error);
    EXPECT_THAT(report.warnings, ElementsAre("m.json: /inner/deep: unknown key, not used",
                                             "m.json: /odd?key: unknown key, not used"));
}

TEST(JsonObject, TakesNoOtherKindForAnObject) {
    JsonReport report;
    const Json json = parseJson("[1]", "m.json").value();
    JsonObject object(json, "", report);
    EXPECT_EQ(report.error->place, "/");
    EXPECT_FALSE(object.has("a"));
    EXPECT_EQ(object.text("a"), "");
}

}  // namespace
}  // namespace fettle
