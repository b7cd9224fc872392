#include "ui/dialogs/balance_model.h"

#include "ui/model/engine_words.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

bool isAt(const BalanceRemark& remark, const std::string& place, bool below) {
    return remark.place == place || (below && remark.place.starts_with(place + "/"));
}

}  // namespace

void nameInLanguage(BalanceJob& job, std::size_t plane, std::size_t sensor) {
    for (std::size_t p = plane; p < job.planes.size(); ++p)
        job.planes[p].name = kept(engineText(job.planes[p].name));
    for (std::size_t s = sensor; s < job.sensors.size(); ++s)
        job.sensors[s].name = kept(engineText(job.sensors[s].name));
}

void BalanceModel::setJob(BalanceJob job, bool closed) {
    job_ = std::move(job);
    fitToMethod(job_);
    closed_ = closed;
    dirty_ = false;
    answer_ = solveBalance(job_);
    emit jobReplaced();
    emit changed();
}

void BalanceModel::edit(const std::function<void(BalanceJob&)>& change) {
    if (closed_) return;
    BalanceJob next = job_;
    change(next);
    fitToMethod(next);
    nameInLanguage(next, job_.planes.size(), job_.sensors.size());
    if (balanceJson(next) == balanceJson(job_)) return;
    job_ = std::move(next);
    dirty_ = true;
    answer_ = solveBalance(job_);
    emit changed();
}

QString BalanceModel::remarksAt(const std::string& place, bool below) const {
    QStringList words;
    for (const BalanceRemark& remark : answer_.remarks)
        if (isAt(remark, place, below)) words << shown(remark.words);
    words.removeDuplicates();
    return words.join(QStringLiteral("; "));
}

bool BalanceModel::troubleAt(const std::string& place, bool below) const {
    for (const BalanceRemark& remark : answer_.remarks)
        if (isAt(remark, place, below) && remark.kind != BalanceRemark::Kind::Missing) return true;
    return false;
}

}  // namespace fettle
