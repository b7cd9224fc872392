#include "app/desktop/options.h"

#include <CLI/CLI.hpp>

#include "core/base/text.h"
#include "core/diagnosis/settings.h"
#include "ui/window/page_place.h"

namespace fettle {

namespace {

void readTime(const std::string& text, DesktopOptions& options) {
    if (text.empty()) return;
    options.time = parseUtc(text);
    if (!options.time) throw CLI::ValidationError("--time", "must be UTC like 2026-05-04T06:20:00Z");
}

void readSize(const std::string& text, DesktopOptions& options) {
    if (text.empty()) return;
    const auto parts = split(text, 'x');
    const auto width = parts.size() == 2 ? parseInteger(parts[0]) : std::nullopt;
    const auto height = parts.size() == 2 ? parseInteger(parts[1]) : std::nullopt;
    const auto sound = [](const std::optional<long long>& n) { return n && *n >= 320 && *n <= 10000; };
    if (!sound(width) || !sound(height))
        throw CLI::ValidationError("--size", "must be WIDTHxHEIGHT, each 320 to 10000, like 1280x800");
    options.width = int(*width);
    options.height = int(*height);
}

std::vector<std::string> dialogs() {
    std::vector<std::string> names;
    for (const QString& name : dialogNames())
        names.push_back(name.toStdString());
    return names;
}

void check(const DesktopOptions& options) {
    if (!options.capture.empty() && !options.sheet.empty())
        throw CLI::ValidationError("--capture", "and --sheet are two different things to make; give one");
    if (!options.sheet.empty() && (options.fleet.empty() || options.machine.empty() != options.allSheets))
        throw CLI::ValidationError("--sheet", "needs a FLEET and either --machine TAG or --all");
    if (!options.report.empty() &&
        (options.fleet.empty() || !options.sheet.empty() || !options.capture.empty()))
        throw CLI::ValidationError("--report", "needs a FLEET, and neither --sheet nor --capture beside it");
    if (options.page == "machine" && options.machine.empty() && !options.capture.empty())
        throw CLI::ValidationError("--page", "machine needs --machine TAG");
}

}  // namespace

std::optional<DesktopOptions> readOptions(int argc, char** argv, int& status) {
    DesktopOptions options;
    std::string time, size;
    CLI::App app("Fettle: the condition of a fleet of electric motors and the machines they drive.",
                 "fettle");
    app.set_version_flag("--version", "fettle " + WeighingSettings().engine());
    app.add_option("FLEET", options.fleet, "fleet file to open; without it the start page is shown");
    app.add_option("--page", options.page, "page to open")
        ->check(CLI::IsMember({"round", "machine", "register"}));
    app.add_option("--machine", options.machine, "tag of a machine");
    app.add_option("--at", options.at, "place on the machine, like \"driver DE\"");
    app.add_option("--fault", options.fault, "fault key, like bearing_outer_race");
    app.add_option("--time", time, "moment in UTC, like 2026-05-04T06:20:00Z");
    app.add_option("--dialog", options.dialog, "dialog to open")->check(CLI::IsMember(dialogs()));
    app.add_option("--theme", options.theme, "colours")->check(CLI::IsMember({"light", "dark", "system"}));
    app.add_option("--language", options.language, "words of the window, like de or en");
    app.add_option("--scale", options.scale,
                   "whole-window scale; of a picture: pixels for one of the window's")
        ->check(CLI::Range(1.0, 2.0));
    app.add_option("--size", size, "size of the window, WIDTHxHEIGHT");
    app.add_option("--capture", options.capture, "make a picture (PNG) of the page and end");
    app.add_option("--sheet", options.sheet,
                   "make the findings sheet (PDF) of --machine and end; with --all a folder of them, or one "
                   "PDF with all where it ends in .pdf");
    app.add_option("--report", options.report, "make the report (PDF) of the round and end");
    app.add_flag("--inches", options.inches, "on a sheet or report: in/s beside mm/s");
    app.add_flag("--all", options.allSheets, "with --sheet: one for every machine to act on or plan for");
    app.add_option("--paper", options.paper, "of a sheet")->check(CLI::IsMember({"a4", "letter"}));
    app.add_option("--today", options.today, "day a sheet is made on, like 2026-05-12; else the clock's");
    app.add_option("--finding", options.finding, "which finding of the machine, strongest first")
        ->check(CLI::Range(0, 1000));
    try {
        app.parse(argc, argv);
        readTime(time, options);
        readSize(size, options);
        check(options);
    } catch (const CLI::ParseError& problem) {
        status = app.exit(problem) == 0 ? 0 : 2;
        return std::nullopt;
    }
    return options;
}

}  // namespace fettle
