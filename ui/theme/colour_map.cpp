#include "ui/theme/colour_map.h"

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

struct Rgb {
    double r, g, b;
};

constexpr std::array<Rgb, 10> kAnchors = {{{0x00, 0x22, 0x4e},
                                           {0x12, 0x35, 0x70},
                                           {0x3b, 0x49, 0x6c},
                                           {0x57, 0x5d, 0x6d},
                                           {0x70, 0x71, 0x73},
                                           {0x8a, 0x86, 0x78},
                                           {0xa5, 0x9c, 0x74},
                                           {0xc3, 0xb3, 0x69},
                                           {0xe1, 0xcc, 0x55},
                                           {0xfe, 0xe8, 0x38}}};

double lightnessOf(const Rgb& c) {
    const double y =
        0.2126 * linearLight(c.r / 255) + 0.7152 * linearLight(c.g / 255) + 0.0722 * linearLight(c.b / 255);
    return y > 0.008856 ? 116 * std::cbrt(y) - 16 : 903.3 * y;
}

// Along the anchors, 0 to 1.
Rgb along(double t) {
    const double at = std::clamp(t, 0.0, 1.0) * double(kAnchors.size() - 1);
    const auto i = std::min(std::size_t(at), kAnchors.size() - 2);
    const double f = at - double(i);
    const Rgb &a = kAnchors[i], &b = kAnchors[i + 1];
    return {a.r + f * (b.r - a.r), a.g + f * (b.g - a.g), a.b + f * (b.b - a.b)};
}

// Lightness rises along the anchors: bisection.
Rgb withLightness(double wanted) {
    double low = 0, high = 1;
    for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (lightnessOf(along(middle)) < wanted ? low : high) = middle;
    }
    return along(low);
}

ColourMap makeBlueToYellow() {
    ColourMap map{};
    const double first = lightnessOf(kAnchors.front()), last = lightnessOf(kAnchors.back());
    for (std::size_t i = 0; i < map.size(); ++i) {
        const Rgb c = withLightness(first + (last - first) * double(i) / double(map.size() - 1));
        map[i] = qRgb(int(std::lround(c.r)), int(std::lround(c.g)), int(std::lround(c.b)));
    }
    return map;
}

// Even in lightness too: white paper to nearly black.
ColourMap makeGreys() {
    ColourMap map{};
    for (std::size_t i = 0; i < map.size(); ++i) {
        const double wanted = 100 - 92 * double(i) / double(map.size() - 1);
        double low = 0, high = 255;
        for (int step = 0; step < 40; ++step) {
            const double middle = (low + high) / 2;
            (lightnessOf({middle, middle, middle}) < wanted ? low : high) = middle;
        }
        const int grey = int(std::lround(low));
        map[i] = qRgb(grey, grey, grey);
    }
    return map;
}

}  // namespace

const ColourMap& blueToYellow() {
    static const ColourMap map = makeBlueToYellow();
    return map;
}

const ColourMap& greysForPrint() {
    static const ColourMap map = makeGreys();
    return map;
}

double linearLight(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double lightness(QRgb colour) {
    return lightnessOf({double(qRed(colour)), double(qGreen(colour)), double(qBlue(colour))});
}

}  // namespace fettle
