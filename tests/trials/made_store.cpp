#include "tests/trials/made_store.h"

#include "core/diagnosis/examine.h"
#include "core/intake/stored_form.h"

namespace fettle::trials {

NewRecording storedRow(const Machine& described, std::int64_t machine, const RecordingPtr& recording) {
    const auto examined = wanted(examineRecording(described, recording));
    NewRecording row = storedForm(recording, machine, described, examined);
    row.key = recordingKey(recording->file, *recording);
    row.spectra.clear();
    auto bare = std::make_shared<Recording>(*recording);
    for (Channel& channel : bare->channels)
        channel.samples.resize(1);
    row.recording = std::move(bare);
    return row;
}

}  // namespace fettle::trials
