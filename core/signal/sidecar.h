// Why: what a recording's file cannot carry, machine, point, time, speed, units, comes from a JSON file
// beside it. The call is applySidecar in reader.h; here is the name of the file that belongs to a recording.
// Rules: unknown keys are warnings, wrong kinds and values errors with the place "/channels/1/scale"; on an
// error the recording is left as it was. `channels` names all of the file's channels in order. `scale` is not
// 0 and within 1e12; it multiplies samples and full scale. `sample_rate_hz` may put the file's own rate right
// by 1 % at most. `samples` names variables of a MAT or HDF5 file. `file_time` is "utc" or absent: the zone
// of the date that a file carries without one.
#pragma once

#include <string>

namespace fettle {

// The path as given with its extension replaced by ".json"; links are not resolved.
std::string sidecarPath(const std::string& recordingPath);

}  // namespace fettle
