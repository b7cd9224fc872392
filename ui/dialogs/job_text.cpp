#include "ui/dialogs/job_text.h"

#include <QCoreApplication>

#include "ui/dialogs/before_after_dialog.h"
#include "ui/model/job_model.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

class Text {
    Q_DECLARE_TR_FUNCTIONS(JobText)
  public:
    static QString of(const JobDetail& detail) {
        QString html = paragraph(head(detail.job));
        if (const QString dates = datesOf(detail.job); !dates.isEmpty()) html += paragraph(dates);
        if (detail.verification) html += paragraph(verified(*detail.verification));
        for (const Feedback& report : detail.reports)
            html += paragraph(reported(report));
        if (!detail.steps.empty()) html += stepsOf(detail.steps);
        return html;
    }

  private:
    static QString paragraph(const QString& html) { return QStringLiteral("<p>%1</p>").arg(html); }
    static QString safe(const std::string& text) { return shown(text).toHtmlEscaped(); }

    static QString head(const Job& job) {
        const QString name =
            tr("Job %1 of %2: %3").arg(job.id).arg(safe(job.machine), jobStateWord(job.state));
        QString html = QStringLiteral("<b>%1</b><br>%2").arg(name, jobFindingWords(job).toHtmlEscaped());
        if (job.replaces)
            html += QStringLiteral("<br>") +
                    tr("Revision %1, replaces job %2").arg(job.revision).arg(*job.replaces);
        return html;
    }
    static QString datesOf(const Job& job) {
        QStringList parts;
        if (!job.orderPartsBy.empty()) parts << tr("order parts by %1").arg(dateText(job.orderPartsBy));
        if (!job.runUntil.empty()) parts << tr("do not run beyond %1").arg(dateText(job.runUntil));
        if (!job.plannedStop.empty()) parts << tr("planned stop %1").arg(dateText(job.plannedStop));
        if (!job.workOrder.empty()) parts << tr("work order %1").arg(safe(job.workOrder));
        return parts.join(QStringLiteral(" \u00b7 "));
    }
    static QString verified(const JobVerification& v) {
        if (!v.done)
            return tr(
                "Verification: it is not known when the work was done. Move the job on to "
                "\"done\" and say the day.");
        const QString done = tr("Done on %1 (%2).").arg(dateText(v.doneOn), safe(v.done->words));
        const QString now =
            v.verdict
                ? tr("Verification: <b>%1</b>. %2").arg(cureWord(v.verdict->outcome), safe(v.verdict->reason))
                : tr("Verification: %1.").arg(safe(v.window.words));
        return done + QStringLiteral("<br>") + now;
    }
    static QString outcome(const std::string& key) {
        if (key == "confirmed") return tr("confirmed");
        if (key == "another_fault") return tr("another fault");
        if (key == "not_found") return tr("nothing found");
        return tr("not opened");
    }
    static QString reported(const Feedback& report) {
        QStringList parts;
        for (const std::string& part : {report.code, report.text})
            if (!part.empty()) parts << safe(part);
        return tr("Report of %1 by %2: <b>%3</b>, %4")
                   .arg(dateText(report.time), safe(report.by), outcome(report.outcome),
                        faultWords(report.fault, report.at).toHtmlEscaped()) +
               (parts.isEmpty() ? QString() : QStringLiteral("<br>") + parts.join(QStringLiteral("; ")));
    }
    static QString stepsOf(const std::vector<JobStep>& steps) {
        QString rows;
        for (const JobStep& step : steps)
            rows += QStringLiteral(
                        "<tr><td>%1&nbsp;&nbsp;</td><td>%2&nbsp;&nbsp;</td><td>%3</td>"
                        "<td>&nbsp;&nbsp;%4</td></tr>")
                        .arg(dateText(step.time), jobStateWord(step.state), safe(step.text), safe(step.by));
        return QStringLiteral("<table>%1</table>").arg(rows);
    }
};

}  // namespace

QString jobText(const JobDetail& detail) {
    return Text::of(detail);
}

}  // namespace fettle
