// Why: whether a line is new is seen by laying the spectrum over what the sound machine used to draw: per
// cell the median of its stored spectra and the two between which most of them lie. Speeds differ from day to
// day, so each spectrum is stretched to the speed asked for, line by line, by maximum: a line of one cell
// stays one and none is lost. Lines of the mains, which do not move with speed, blur by that stretch. Shapes:
// cell i covers [i, i + 1) x topHz / cells. Units: the spectra's. Thread: pure. Errors: none; without spectra
// the band is empty.
#pragma once

#include <cstddef>
#include <vector>

namespace fettle {

struct SoundSpectrum {
    double topHz = 0;
    double shaftHz = 0;  // 0: not known, taken as it is
    std::vector<float> lines;
};

struct SpectrumBand {
    double topHz = 0;
    std::vector<float> low, middle, high;
    std::size_t spectra = 0;
};

// Lines moved to the place they have at `shaftHz`; same shape.
std::vector<float> movedToSpeed(const SoundSpectrum& spectrum, double shaftHz);

// Of the spectra with the shape of the newest (the last). `share`: of them below `low`, and above `high`.
SpectrumBand bandOf(const std::vector<SoundSpectrum>& spectra, double shaftHz, double share = 0.1);

}  // namespace fettle
