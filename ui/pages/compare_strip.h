// Why: "where is it largest?" in one look: the same quantity at the same moment at the other directions and
// ends of the machine, on what it drives and on its twins, largest first, each as a share of the largest and
// against the place looked at. A row chosen lays that place's spectrum over the one shown; Return goes there.
// Thread: the window's.
#pragma once

#include <QTimeZone>
#include <QWidget>
#include <optional>
#include <vector>

#include "core/fleet/side_by_side.h"
#include "ui/model/units.h"

class QComboBox;
class QLabel;
class QTableWidget;
class QToolButton;

namespace fettle {

enum class SideQuantity { Velocity, Order1, HighBand, Line };

class CompareStrip : public QWidget {
    Q_OBJECT
  public:
    explicit CompareStrip(QWidget* parent);

    void setRows(std::vector<SideRow> rows, const QString& lineUnit);
    void setWords(const QString& words);  // instead of rows
    void setUnits(Units units);
    void setZone(const QTimeZone& zone);
    const std::vector<SideRow>& rows() const { return rows_; }  // as listed
    void setChosen(int row);                                    // as listed; -1: none
    int chosen() const;
    QSize minimumSizeHint() const override;  // narrow: the last columns give way
    static QString nameOf(const SideRow& row, const QString& hereTag);

  signals:
    void chosenChanged(int row);
    void goTo(int row);
    void belowWanted();  // all places below each other
    void closed();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void rebuild();
    void fitColumns();
    std::optional<double> valueOf(const SideRow& row) const;
    QString unit() const;
    QString tableText() const;

    QComboBox* quantityBox_;
    QToolButton* below_;
    QLabel* words_;
    QTableWidget* table_;
    std::vector<SideRow> rows_;
    QString lineUnit_;
    Units units_;
    QTimeZone zone_ = QTimeZone::utc();
};

}  // namespace fettle
