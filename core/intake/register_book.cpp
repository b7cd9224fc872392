#include "core/intake/register_book.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

Result<BookedMachine> booked(FleetFile& fleet, const MachineEntry& entry, const std::string& timeZone) {
    BookedMachine machine{entry, {}, timeZone};
    const auto history = fleet.machines().history(entry.tag);
    if (!history) return fail(history.error());
    for (const DescriptionEntry& description : *history) {
        auto parsed = parseMachine(description.json, entry.tag);
        BookedMachine::Description booked{description.from, nullptr, {}};
        if (parsed)
            booked.machine = std::make_shared<const Machine>(std::move(parsed->machine));
        else
            booked.problem = parsed.error();
        machine.descriptions.push_back(std::move(booked));
    }
    std::stable_sort(machine.descriptions.begin(), machine.descriptions.end(),
                     [](const auto& a, const auto& b) { return a.from < b.from; });
    return machine;
}

}  // namespace

Result<std::string> BookedMachine::dayOf(Instant time) const {
    return dateIn(timeZone, time);
}

Result<std::shared_ptr<const Machine>> BookedMachine::describedAt(Instant time) const {
    const auto day = dayOf(time);
    if (!day) return fail(day.error());
    const Description* holds = nullptr;
    for (const Description& description : descriptions)
        if (description.from <= *day) holds = &description;
    if (!holds)
        return fail(ErrorKind::NotFound, entry.tag, "",
                    fmt::format("has no description that holds on {}", *day));
    if (!holds->machine) return fail(holds->problem);
    return holds->machine;
}

Result<RegisterBook> RegisterBook::of(FleetFile& fleet) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto entries = fleet.machines().all();
    if (!entries) return fail(entries.error());
    RegisterBook book;
    for (const MachineEntry& entry : *entries) {
        auto machine = booked(fleet, entry, site->timeZone);
        if (!machine) return fail(machine.error());
        book.machines_.emplace(entry.tag, std::move(*machine));
    }
    return book;
}

const BookedMachine* RegisterBook::find(const std::string& tag) const {
    const auto at = machines_.find(tag);
    return at == machines_.end() ? nullptr : &at->second;
}

std::vector<const BookedMachine*> RegisterBook::all() const {
    std::vector<const BookedMachine*> list;
    for (const auto& [tag, machine] : machines_)
        list.push_back(&machine);
    return list;
}

}  // namespace fettle
