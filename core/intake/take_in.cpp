#include "core/intake/take_in.h"

#include "core/base/caught.h"
#include "core/diagnosis/examine.h"
#include "core/intake/level_table.h"
#include "core/intake/stored_form.h"
#include "core/signal/reader.h"
#include "core/signal/sidecar.h"

namespace fettle {

namespace {

TakenIn objected(const FoundFile& file, Objection objection) {
    TakenIn taken;
    taken.kind = TakenIn::Kind::Objected;
    taken.path = file.path;
    taken.objection = std::move(objection);
    return taken;
}

TakenIn stopped(const FoundFile& file, Error failure) {
    TakenIn taken;
    taken.path = file.path;
    taken.failure = std::move(failure);
    return taken;
}

// Without the path, so that the same word about many files is one warning.
std::string withoutPath(const std::string& warning, const std::string& path) {
    for (const std::string& start : {path + ": ", sidecarPath(path) + ": "})
        if (warning.starts_with(start)) return warning.substr(start.size());
    return warning;
}

}  // namespace

Result<bool> IntakeWorker::knows(const RecordingKey& key) {
    if (!fleet_) {
        FleetTuning tuning;
        tuning.quickCheckBytes = 0;  // done when the writer opened it
        auto opened = FleetFile::open(shared_.fleetPath, OpenMode::ReadOnly, tuning);
        if (!opened) return fail(opened.error());
        fleet_ = std::move(*opened);
    }
    return fleet_->recordings().knows(key);
}

TakenIn IntakeWorker::taken(const FoundFile& file) {
    if (isLooseText(shared_.files, file) && shared_.rules.matching(file.path).empty()) {
        TakenIn taken;
        taken.kind = TakenIn::Kind::PassedOver;
        return taken;
    }
    auto read = readWithSource(shared_.files, file.path, hintsOf(shared_.rules, file.path));
    if (!read) return unread(file, read.error());
    if (const auto applied = applyRules(shared_.rules, *read); !applied)
        return objected(file, objectionFrom(applied.error(), file.path));
    const auto admitted = admit(*read->recording, shared_.book, shared_.now);
    if (!admitted) return objected(file, admitted.error());
    read->recording = withPoints(read->recording, *admitted->description);
    const RecordingKey key = recordingKey(read->bytes, *read->recording);
    read->bytes = {};
    TakenIn taken;
    taken.path = file.path;
    const auto known = knows(key);
    if (!known) return stopped(file, known.error());
    if (*known) {
        taken.kind = TakenIn::Kind::Known;
        return taken;
    }
    const auto examined = examineRecording(*admitted->description, read->recording);
    if (!examined) return stopped(file, examined.error());
    NewRecording made =
        storedForm(read->recording, admitted->machine->entry.id, *admitted->description, *examined);
    made.key = key;
    made.format = read->format;
    made.sidecar = std::move(read->sidecar);
    made.late = shared_.closed.covers(*read->recording->time);
    auto packed = packRecording(std::move(made), shared_.fleetPath);
    if (!packed) return objected(file, {false, packed.error().place, packed.error().rule});
    taken.recording = std::move(*packed);
    for (const std::string& warning : read->recording->warnings)
        taken.warnings.push_back(withoutPath(warning, file.path));
    for (std::string& note : notesOn(*read->recording, *admitted->description))
        taken.warnings.push_back(std::move(note));
    taken.bytes = bytesOf(taken.recording);
    taken.kind = TakenIn::Kind::Examined;
    return taken;
}

// What is no recording may be a table of levels.
TakenIn IntakeWorker::unread(const FoundFile& file, const Error& error) const {
    if (auto table = levelTableOf(shared_.files, file.path)) {
        TakenIn taken;
        taken.kind = TakenIn::Kind::Levels;
        taken.path = file.path;
        taken.bytes = table->size();
        taken.table = std::move(*table);
        return taken;
    }
    Objection objection = objectionFrom(error, file.path);
    objection.unread = true;
    return objected(file, std::move(objection));
}

TakenIn IntakeWorker::take(const FoundFile& file) {
    TakenIn done;
    const std::string thrown = caught([&] { done = taken(file); });
    return thrown.empty() ? std::move(done) : objected(file, {false, "", thrown});
}

}  // namespace fettle
