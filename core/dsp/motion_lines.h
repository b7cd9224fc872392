// Why: one measured spectrum is asked for as acceleration, velocity or displacement, and its lines as r.m.s.,
// peak, peak to peak or density: which of these a number is decides by factors of up to three, so the
// arithmetic stands in one place. A sine's peak is sqrt 2 times its r.m.s.; a line of noise has no peak, so
// the peak is that of a sine of the line's r.m.s. Source: a sine's velocity is its acceleration over 2 pi f,
// its displacement the velocity over 2 pi f; density: mean square over the window's noise bandwidth. Units:
// g, mm/s, um; hertz. Thread: any.
#pragma once

#include <span>
#include <vector>

namespace fettle {

enum class Motion { Acceleration, Velocity, Displacement };  // g, mm/s, um

// Line k of `rms` stands at k x stepHz. Lines below cornerHz, and the one at 0 Hz, are zero where something
// is integrated.
std::vector<float> motionLines(std::span<const float> rms, double stepHz, Motion from, Motion to,
                               double cornerHz);

enum class LineReading { Rms, Peak, PeakToPeak, Density };

// bandwidthHz: of a line, for the density; > 0 there.
double lineReading(double rms, LineReading reading, double bandwidthHz);

}  // namespace fettle
