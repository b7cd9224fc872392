// Why: impacts of a rolling bearing ring a resonance somewhere in the band; the spectrum of the band's
// squared envelope shows their rate. All bands of a channel come from one forward transform of the whole
// record. Source: Randall and Antoni, MSSP 25 (2011) 485-520, section 4 (squared envelope spectrum); fixed
// tree of bands after Antoni, MSSP 21 (2007) 108-124; cepstrum pre-whitening: Borghesani et al., MSSP 36
// (2013) 370-384. Shapes: n samples give n / 2 + 1 bins of width df = rate / n; an envelope spectrum has the
// same df.
#pragma once

#include <vector>

#include "core/dsp/fft.h"

namespace fettle {

struct Band {
    double lowHz = 0, highHz = 0;
    int level = 1;  // parts the tree's range was cut into: 1, 3, 6 or 12
};

// The fixed tree over 2 to 48 % of the sample rate: whole, thirds, sixths, twelfths, none narrower than
// narrowestHz; the whole is always there.
std::vector<Band> bandTree(double sampleRateHz, double narrowestHz);

// Power of the Hann-windowed record from the transform of the plain one: the window is a convolution of
// neighbouring bins with -1/4, 1/2, -1/4 (Harris, Proc. IEEE 66 (1978) 51-83, from memory), so neither a
// table nor a pass over the samples is needed. `bins` are the n / 2 + 1 of an even n, its mean removed (in
// float a large one would drown the rest). Scale: |transform|^2, of the first `count` bins.
void hannPower(const FftVector<std::complex<float>>& bins, std::size_t count, std::vector<float>& power);

// Every magnitude set to 1, phases kept; zero bins stay zero.
void prewhiten(FftVector<std::complex<float>>& halfSpectrum);

// Holds the buffers between bands. Thread: one an examination thread.
class BandEnvelope {
  public:
    // The power spectrum |FFT(Hann x (squared envelope - mean))|^2 of the band's analytic signal, bins 0 ..
    // up to topHz or 90 % of the band's width, whichever is lower. The band is zero-padded to at least twice
    // its width, because the squared envelope is twice as wide as the band. Scale: arbitrary, the same over
    // all bins.
    const std::vector<float>& spectrum(const FftVector<std::complex<float>>& halfSpectrum, double df,
                                       const Band& band, double topHz);

  private:
    FftVector<std::complex<float>> shifted_, analytic_, bins_;
    FftVector<float> envelope_;
    std::vector<float> power_;
};

}  // namespace fettle
