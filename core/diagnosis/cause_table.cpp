#include "core/diagnosis/cause_table.h"

#include <algorithm>
#include <cmath>

#include "core/machine/resource.h"

namespace fettle {

namespace {
constexpr const char* kCausesFile = "causes.json";
constexpr double kMostDban = 100;
}  // namespace

// Fills a table from its file.
class CauseReading {
  public:
    explicit CauseReading(CauseTable& table) : table_(table) {}

    Status read(const Json& json) {
        JsonReport report{kCausesFile, {}, {}};
        {
            JsonObject root(json, "", report);
            for (const char* told : {"schema", "about", "prior_source"})
                root.raw(told);
            table_.capDban_ = root.number("cap_dban", 0, kMostDban, true).value_or(0);
            for (const Json* item : root.list("causes"))
                addCause(*item, report);
            for (const Json* item : root.list("features"))
                addFeature(*item, report);
        }
        if (report.error) return fail(*report.error);
        if (table_.causes_.empty()) return fail(ErrorKind::Invalid, kCausesFile, "/causes", "names no cause");
        return {};
    }

  private:
    void addCause(const Json& item, JsonReport& report) {
        JsonObject json(item, "/causes", report);
        Cause cause;
        cause.fault = json.text("fault", true);
        cause.name = json.text("name", true);
        cause.test = json.text("test", true);
        cause.prior = json.number("prior", 1e-6, 1, true).value_or(1e-6);
        cause.neverNamed = json.boolean("never_named").value_or(false);
        table_.causes_.push_back(std::move(cause));
    }

    void addFeature(const Json& item, JsonReport& report) {
        JsonObject json(item, "/features", report);
        CauseTable::Feature feature;
        feature.key = json.text("key", true);
        feature.words = json.text("words", true);
        feature.unit = json.text("unit", true);
        feature.source = json.text("source", true);
        const std::size_t edges = json.raw("edges").is_array() ? json.raw("edges").size() : 0;
        feature.edges = json.numbers("edges", edges, -1e6, 1e6);
        if (!std::is_sorted(feature.edges.begin(), feature.edges.end()))
            report.broken(json.place("edges"), "must rise");
        JsonObject rows(json.raw("dban"), json.place("dban"), report);
        for (const Cause& cause : table_.causes_)
            feature.dban.push_back(rows.numbers(cause.fault, edges + 1, -kMostDban, kMostDban));
        for (const std::vector<double>& row : feature.dban)
            if (row.size() != edges + 1)
                report.broken(json.place("dban"), "needs one number more than edges");
        table_.features_.push_back(std::move(feature));
    }

    CauseTable& table_;
};

Result<CauseTable> CauseTable::load() {
    const auto json = sharedResource(kCausesFile);
    if (!json) return fail(json.error());
    CauseTable table;
    if (auto good = CauseReading(table).read(**json); !good) return fail(good.error());
    return table;
}

const Cause* CauseTable::cause(const std::string& fault) const {
    const auto found =
        std::find_if(causes_.begin(), causes_.end(), [&](const Cause& c) { return c.fault == fault; });
    return found == causes_.end() ? nullptr : &*found;
}

CauseShares CauseTable::sharesOf(const std::vector<CauseFeature>& given) const {
    CauseShares result;
    std::vector<double> sums;
    for (const Cause& cause : causes_)
        sums.push_back(10 * std::log10(cause.prior));
    for (const Feature& feature : features_) {
        const auto one = std::find_if(given.begin(), given.end(),
                                      [&](const CauseFeature& f) { return f.key == feature.key; });
        if (one == given.end() || std::isnan(one->value)) continue;
        const auto bin = std::size_t(
            std::upper_bound(feature.edges.begin(), feature.edges.end(), one->value) - feature.edges.begin());
        CauseRow row{feature.words, feature.unit, feature.source, one->value, {}};
        for (std::size_t c = 0; c < causes_.size(); ++c) {
            row.dban.push_back(std::clamp(feature.dban[c][bin], -capDban_, capDban_));
            sums[c] += row.dban.back();
        }
        result.rows.push_back(std::move(row));
    }
    const double top = *std::max_element(sums.begin(), sums.end());
    double total = 0;
    for (const double sum : sums)
        total += std::pow(10.0, (sum - top) / 10);
    for (const double sum : sums)
        result.shares.push_back(std::pow(10.0, (sum - top) / 10) / total);
    return result;
}

std::size_t CauseShares::largest() const {
    return std::size_t(std::max_element(shares.begin(), shares.end()) - shares.begin());
}

}  // namespace fettle
