// Why: made-up data and small helpers that the plot, panel and page tests share. Nothing here is a check.
#pragma once

#include <QApplication>
#include <QImage>
#include <QTest>
#include <QWidget>
#include <cmath>
#include <memory>
#include <vector>

#include "core/diagnosis/examination.h"
#include "ui/plot/waterfall_data.h"

namespace fettle::test {

inline constexpr double kDayMs = 24 * 3600 * 1e3;
inline constexpr double kStartMs = 1767571200000.0;  // 2026-01-05 00:00 UTC

inline std::vector<WaterfallRow> dailyRows(std::size_t rows, std::size_t lines, float floor = 0.01F) {
    std::vector<WaterfallRow> made(rows);
    for (std::size_t i = 0; i < rows; ++i) {
        made[i].ms = kStartMs + double(i) * kDayMs;
        made[i].recording = std::int64_t(i) + 1;
        made[i].topHz = 1000;
        made[i].shaftHz = 25;
        made[i].lines.assign(lines, floor);
    }
    return made;
}

inline QImage pictureOf(QWidget& widget) {
    return widget.grab().toImage().convertToFormat(QImage::Format_RGB32);
}

inline void settle() {
    for (int i = 0; i < 5; ++i)
        QApplication::processEvents();
}

inline LineRow lineRow(const std::string& name, double hz, LineState state, double dban, int harmonic = 1) {
    LineRow row;
    row.name = name;
    row.order = hz / 25;
    row.expectedHz = hz;
    row.foundHz = state == LineState::Found ? hz + 0.2 : state == LineState::Absent ? hz : 0;
    row.aboveFloorDb = state == LineState::Found ? 18 : 1;
    row.w = 0.8;
    row.rankP = state == LineState::Found ? 0.001 : 0.6;
    row.weightDban = state == LineState::LeftOut ? 0 : dban;
    row.state = state;
    row.why = state == LineState::LeftOut ? "shared with order 5 of the shaft" : "";
    row.carrier = true;
    row.harmonic = harmonic;
    return row;
}

// Rows whose printed tenths do not add up by themselves: 0.04 and 0.06 leave rounding behind.
inline Hypothesis outerRace(int recordings = 3) {
    Hypothesis h;
    h.fault = "bearing_outer_race";
    h.at = "driver DE";
    h.best.view = "x, envelope 3000-3920 Hz";
    for (int i = 1; i <= 12; ++i) {
        const LineState state = i == 5 ? LineState::LeftOut : i == 7 ? LineState::Absent : LineState::Found;
        h.best.rows.push_back(lineRow(i == 1 ? "BPFO" : std::to_string(i) + " x BPFO", 88.3 * i, state,
                                      state == LineState::Found ? 3.04 + 0.006 * i : -2.06, i));
    }
    double sum = 0;
    for (const LineRow& row : h.best.rows)
        sum += row.weightDban;
    h.best.searchDban = -9.17;
    h.best.weightDban = sum + h.best.searchDban;
    h.recordingCount = std::size_t(recordings);
    h.meanDban = recordings > 1 ? -1.26 : 0;
    h.weightDban = h.best.weightDban + h.meanDban;
    h.beforeClaimsDban = h.weightDban;
    h.sentence = "Outer-race defect of the driver DE bearing.";
    h.urgency = "plan";
    h.provedOn = "open data";
    h.severity = {"stage", "developed", {}, {}, "", ""};
    return h;
}

inline Hypothesis considered(const std::string& fault, const std::string& at, std::optional<double> dban,
                             const std::string& why = "") {
    Hypothesis h;
    h.fault = fault;
    h.at = at;
    h.weightDban = dban;
    h.beforeClaimsDban = dban;
    h.why = why;
    h.recordingCount = 1;
    if (dban) {
        h.best.rows.push_back(lineRow("BPFI", 135.7, LineState::Absent, *dban));
        h.best.weightDban = *dban;
    }
    return h;
}

inline Examination madeExamination(int recordings = 3) {
    Examination e;
    e.machine = "KL-ID-01";
    e.findings = {outerRace(recordings)};
    e.considered = {considered("unbalance", "driver", {}, "no baseline"),
                    considered("bearing_cage", "driver DE", -4.2),
                    considered("bearing_inner_race", "driver DE", 3.1), outerRace(recordings)};
    e.blind = {{"bearing_cage", "driver DE", "record too short", "record 4 s"},
               {"rotor_bar", "driver", "needs flux", ""}};
    for (int i = 0; i < recordings; ++i) {
        RecordingFacts facts;
        facts.channels.push_back({"x", "M-DE", "horizontal", "acceleration", 12800, 25600});
        e.recordings.push_back(facts);
    }
    return e;
}

}  // namespace fettle::test
