#include "ui/sheet/sheet_units.h"

#include "ui/model/unit_words.h"

namespace fettle {

namespace {

void say(std::string& text, const Units& units) {
    text = withUnitsBeside(QString::fromStdString(text), units).toStdString();
}

void say(std::vector<std::string>& texts, const Units& units) {
    for (std::string& text : texts)
        say(text, units);
}

}  // namespace

SheetContent withUnitsBeside(SheetContent sheet, const Units& units) {
    if (!units.inches && !units.fahrenheit) return sheet;
    for (std::string* text : {&sheet.firstLine, &sheet.verdict, &sheet.howBad, &sheet.limitDate,
                              &sheet.untilThen, &sheet.stopAtOnceIf, &sheet.ifLeft, &sheet.measureAfter,
                              &sheet.cured, &sheet.spectrum.caption, &sheet.trend.caption})
        say(*text, units);
    for (std::vector<std::string>* texts :
         {&sheet.against, &sheet.wouldSpeakAgainst, &sheet.rivals, &sheet.otherFindings})
        say(*texts, units);
    for (SheetStep& step : sheet.steps)
        say(step.text, units);
    for (SheetBlind& blind : sheet.blind)
        say(blind.why, units);
    for (SheetDate& date : sheet.dates)
        say(date.words, units);
    return sheet;
}

}  // namespace fettle
