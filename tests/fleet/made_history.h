// Why: what is asked of months (did the job cure, how long was the warning, what did the grease do) is tested
// on months made by hand: one recording a day at 06:00 UTC with levels, spectra and an examination as told,
// put into the stores as intake would. Nothing is simulated, so every expected answer can be worked out on
// paper. Site in UTC, area "kiln"; motor of 75 kW on a rigid base.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <memory>

#include "core/exchange/examination_json.h"
#include "core/fleet/site_calendar.h"
#include "core/store/fleet_file.h"
#include "tests/base/scratch_folder.h"
#include "tests/diagnosis/made_recordings.h"
#include "tests/round/made_weeks.h"

namespace fettle::fleet_test {

// A day of a machine.
struct Heard {
    double velocityMmS = 1, order1MmS = 0.5, highBandG = 0.1;
    double raceDban = -3;  // outer race, driver DE
    double loadPct = 80;
    std::string running = "running", point = "P";
    std::optional<double> lineHz;  // a line in the spectrum
    std::string failedCheck = {};  // code of a sensor check
    std::optional<double> frameTempC = {}, ambientTempC = {};
};

class MadeHistory : public testing::Test {
  protected:
    void SetUp() override { begin("site"); }
    void begin(const std::string& name) {
        auto made = FleetFile::create(folder_ / name + ".fettle", {"Test works", "UTC", 0.1});
        ASSERT_TRUE(made);
        fleet_ = std::move(*made);
        for (const char* tag : {"FN-01", "FN-02"}) {
            std::string text = made::motorText();
            text.replace(text.find("\"T-1\""), 5, "\"" + std::string(tag) + "\", \"area\": \"kiln\"");
            ASSERT_TRUE(fleet_->machines().put(text, tag));
        }
    }

    static Instant at(const std::string& text) { return parseUtc(text).value(); }
    void hear(const std::string& tag, const std::string& date, const Heard& heard) {
        const auto put = fleet_->recordings().put(recordingOf(tag, at(date + "T06:00:00Z"), heard));
        ASSERT_TRUE(put) << put.error().sentence();
    }
    // Every day from `first` to `last`, at these times.
    void hearDaysAt(const std::string& tag, const std::string& first, const std::string& last,
                    const std::vector<std::pair<std::string, Heard>>& times) {
        std::vector<NewRecording> all;
        for (std::string date = first; date <= last; date = datePlus(date, 1).value())
            for (const auto& [time, heard] : times)
                all.push_back(recordingOf(tag, at(date + "T" + time + ":00Z"), heard));
        const auto put = fleet_->recordings().putAll(all);
        ASSERT_TRUE(put) << put.error().sentence();
    }
    // Every day from `first` to `last`.
    void hearDays(const std::string& tag, const std::string& first, const std::string& last,
                  const Heard& heard) {
        std::vector<NewRecording> all;
        for (std::string date = first; date <= last; date = datePlus(date, 1).value())
            all.push_back(recordingOf(tag, at(date + "T06:00:00Z"), heard));
        const auto put = fleet_->recordings().putAll(all);
        ASSERT_TRUE(put) << put.error().sentence();
    }
    void tell(const std::string& tag, const std::string& time, const std::string& kind,
              const std::string& where = "", const std::string& text = "") {
        ASSERT_TRUE(fleet_->log().addEvent({0, tag, at(time), kind, where, text, "test"}));
    }
    Job job(const std::string& tag, const std::string& created, const std::string& finding) {
        Job one;
        one.machine = tag;
        one.findings = {finding};
        one.state = "done";
        one.createdAt = at(created);
        one.id = fleet_->log().putJob(one).value();
        return one;
    }

    ScratchFolder folder_;
    std::unique_ptr<FleetFile> fleet_;

  private:
    static TrendRow trendOf(const Heard& heard, Instant time) {
        TrendRow row;
        row.channel = "x", row.point = heard.point, row.quantity = "acceleration", row.unit = "g";
        row.direction = "horizontal";
        row.time = time;
        row.running = heard.running;
        const auto set = [&](Quantity quantity, double value) { row.values[std::size_t(quantity)] = value; };
        set(Quantity::VelocityRms, heard.velocityMmS);
        set(Quantity::AccelerationRms, 0.2);
        set(Quantity::Order1, heard.order1MmS);
        set(Quantity::HighBand, heard.highBandG);
        if (heard.running == "running") set(Quantity::SpeedRpm, 1484);
        set(Quantity::LoadPct, heard.loadPct);
        row.values[std::size_t(Quantity::FrameTempC)] = heard.frameTempC;
        row.values[std::size_t(Quantity::AmbientTempC)] = heard.ambientTempC;
        return row;
    }
    static StoredSpectrum spectrumOf(const Heard& heard) {
        StoredSpectrum spectrum{"x", heard.point, WaterfallKind::Velocity, 1000,
                                std::vector<float>(kStoredLines, 0.01F)};
        if (heard.lineHz) spectrum.lines[std::size_t(*heard.lineHz / 1.25)] = 0.2F;
        return spectrum;
    }
    NewRecording recordingOf(const std::string& tag, Instant time, const Heard& heard) {
        auto raw = std::make_shared<Recording>();
        raw->file = tag + formatUtc(time) + (heard.point == "P" ? "" : heard.point) + ".wav";
        raw->machine = tag;
        raw->point = heard.point;
        raw->time = time;
        raw->loadPct = heard.loadPct;
        raw->channels = {Channel{"x", heard.point, "g", 12800, std::vector<double>(64, 0.0), 16, 16, 16}};
        NewRecording made;
        made.machine = fleet_->machines().byTag(tag).value().id;
        made.key = recordingKey(raw->file, *raw);
        made.format = "WAV";
        made.running = heard.running;
        made.speedRpm = 1484;
        made.engine = "0.1.0 5c1f";
        Examination examination =
            made::examination({made::staged("bearing_outer_race", "driver DE", heard.raceDban,
                                            heard.raceDban >= 20 ? "developed" : "early")});
        if (heard.raceDban < 20) examination.findings.clear();
        examination.recordings[0].running = heard.running;
        examination.recordings[0].channels[0].point = heard.point;
        if (!heard.failedCheck.empty())
            examination.recordings[0].quality.push_back({heard.failedCheck, "x", "failed"});
        made.examinationJson = examinationAsText(examination);
        made.weights = {{"bearing_outer_race", "driver DE", heard.raceDban}};
        made.trends = {trendOf(heard, time)};
        made.spectra = {spectrumOf(heard)};
        made.recording = raw;
        return made;
    }
};

}  // namespace fettle::fleet_test
