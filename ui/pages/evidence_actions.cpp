#include "ui/pages/evidence_actions.h"

#include "core/fleet/asks.h"
#include "ui/model/words.h"
#include "ui/pages/evidence_requests.h"
#include "ui/panels/evidence_panel.h"

namespace fettle {

EvidenceActions::EvidenceActions(FleetWork& work, Selection& selection, EvidencePanel& panel, QObject* parent)
    : QObject(parent), work_(work), selection_(selection), panel_(panel) {
    connect(&panel_, &EvidencePanel::askWanted, this, &EvidenceActions::ask);
    connect(&panel_, &EvidencePanel::asksWanted, this, &EvidenceActions::asksWanted);
    connect(&panel_, &EvidencePanel::whoseLineWanted, this, &EvidenceActions::askWhoseLine);
    connect(&panel_, &EvidencePanel::firstListedWanted, this, &EvidenceActions::askFirstListed);
    connect(&selection_, &Selection::machineChanged, this, &EvidenceActions::read);
    connect(&work_, &FleetWork::changedFleet, this, &EvidenceActions::read);
}

// A machine that is not in the register is told by its page.
void EvidenceActions::read() {
    const std::string tag = kept(selection_.machine());
    if (tag.empty()) return;
    using Standing = std::optional<RoundStanding>;
    work_.ask<Standing>(
        this, QStringLiteral("standing"),
        [tag](FleetFile& fleet, const CancelToken&) { return roundStanding(fleet, tag); },
        [this](Result<Standing> standing) { panel_.setStanding(standing ? *standing : std::nullopt); });
    work_.ask<FaultHistory>(
        this, QStringLiteral("fault history"),
        [tag](FleetFile& fleet, const CancelToken&) { return faultHistory(fleet, tag); },
        [this](Result<FaultHistory> history) { panel_.setHistory(history ? *history : FaultHistory{}); });
    readAsks();
}

void EvidenceActions::readAsks() {
    using Answer = std::vector<Ask>;
    work_.ask<Answer>(
        this, QStringLiteral("asks"),
        [tag = kept(selection_.machine())](FleetFile& fleet, const CancelToken&) {
            return asksOf(fleet, tag);
        },
        [this](Result<Answer> asks) { panel_.setAsks(asks ? *asks : Answer{}, work_.writable()); });
}

void EvidenceActions::ask(const AskSuggestion& suggestion) {
    Ask ask;
    ask.request.machine = kept(selection_.machine());
    ask.request.byHand = suggestion.byHand;
    ask.request.point = suggestion.point;
    ask.request.direction = suggestion.direction;
    ask.request.why = suggestion.why;
    ask.spec = suggestion.spec;
    work_.write<std::int64_t>(
        this, [ask](FleetFile& fleet) { return putAsk(fleet, ask); },
        [this](Result<std::int64_t> id) {
            if (!id) emit troubled(sentence(id.error()));
        });
}

void EvidenceActions::askWhoseLine(double hz) {
    LineQuestion question;
    question.machine = kept(selection_.machine());
    question.hz = hz;
    panel_.sayWhoseLine(tr("Asking who stops when it goes …"));
    work_.ask<WhoseLine>(
        this, QStringLiteral("whose line"),
        [question](FleetFile& fleet, const CancelToken&) { return whoseLine(fleet, question); },
        [this, hz](Result<WhoseLine> found) {
            panel_.sayWhoseLine(found ? whoseLineWords(*found, hz, selection_.units())
                                      : sentence(found.error()));
        });
}

void EvidenceActions::askFirstListed() {
    panel_.sayFirstListed(tr("Making the rounds of the past again …"));
    using Answer = std::vector<Warning>;
    work_.ask<Answer>(
        this, QStringLiteral("first listed"),
        [tag = kept(selection_.machine())](FleetFile& fleet, const CancelToken& cancel) {
            return firstListedOf(fleet, tag, cancel);
        },
        [this](Result<Answer> warnings) {
            panel_.sayFirstListed(warnings ? firstListedWords(*warnings) : sentence(warnings.error()));
        });
}

}  // namespace fettle
