// Why: what is asked about one machine: its week (or any span) as one examination, one recording as examined,
// and the full spectra of a chosen recording. Everything shown on the machine page and printed on the sheet
// comes from here, so that both show the same numbers. Thread: as the FleetFile; detail computation is pure
// and slow (some 10 ms): call it off the window's thread.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/detail.h"
#include "core/diagnosis/examination.h"
#include "core/machine/machine.h"
#include "core/store/fleet_file.h"

namespace fettle {

// The description that holds on the site's day of a moment.
Result<std::shared_ptr<const Machine>> describedAt(FleetFile& fleet, const std::string& tag, Instant time);

// Running recordings of the machine within [from, until] combined (core/diagnosis/combine): the arithmetic
// mean of e-values, rows of the strongest recording. `recordings[i]` of the result is recordingIds[i].
struct SpanExamination {
    std::shared_ptr<const Machine> machine;  // as described at the end of the span
    Examination examination;
    std::vector<std::int64_t> recordingIds;
    std::vector<Instant> times;
};
// One recording as it was weighed.
struct OneWeighed {
    std::int64_t recording = 0;
    Instant time{};
    std::string running;
    Examination examination;
};
// All of a machine within [from, until], oldest first, and the running ones of them joined (empty: none).
Result<std::vector<OneWeighed>> weighedIn(FleetFile& fleet, std::int64_t machine, Instant from,
                                          Instant until);
Result<std::optional<SpanExamination>> joinRunning(std::shared_ptr<const Machine> machine,
                                                   std::vector<OneWeighed> weighed);
Result<std::optional<SpanExamination>> examinationOfSpan(FleetFile& fleet, const std::string& tag,
                                                         Instant from, Instant until);
Result<Examination> examinationOf(FleetFile& fleet, std::int64_t recording);

// Whether a recording of this running state may enter a mean or a trend. An unsteady one may: the state is
// given only where the speed could be followed, so that its lines were read against shaft angle and its
// levels are of a known speed; a trend compares it with its like. One that runs up or down may not.
bool isRunning(const std::string& state);

// Full-resolution spectra of a stored recording for plotting; `view` as named in a finding ("x, envelope
// 3000-3920 Hz, whitened"), empty: the whole band's envelope of the first acceleration channel.
Result<RecordingDetail> detailOf(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                 const std::string& view);

// The weight of one hypothesis recording by recording.
struct WeightAt {
    Instant time{};
    std::int64_t recording = 0;
    double weightDban = 0;
};
Result<std::vector<WeightAt>> weightHistory(FleetFile& fleet, const std::string& tag,
                                            const std::string& fault, const std::string& at, Instant from,
                                            Instant until);

}  // namespace fettle
