// Why: what will be on paper is seen before it goes there: pages as pictures, one under the other, with the
// paper to choose and a zoom. Shared by all that is printed; knows nothing of what it shows. Each picture is
// the page's own drawing. Thread: the window's.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>

#include "ui/sheet/printed_pages.h"
#include "ui/theme/theme.h"

class QComboBox;
class QHBoxLayout;
class QLabel;
class QScrollArea;

namespace fettle {

class PagePreview : public QWidget {
    Q_OBJECT
  public:
    PagePreview(const Theme& theme, PaperSize paper, QWidget* parent);

    QHBoxLayout* head() { return head_; }  // more to choose goes to its left
    void show(std::shared_ptr<PrintedPages> pages);
    void say(const QString& trouble);  // over the pages; empty: nothing
    void wait(const QString& word);    // there as well, while pages are made: no trouble
    PaperSize paper() const;
    double zoom() const { return zoom_; }  // 1: true size on the screen
    void setZoom(double zoom);             // 0: as wide as the window

  signals:
    void paperChanged();  // pages are laid out anew

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void build(PaperSize paper);
    void showPicture();
    void note(const QString& word, Role ink);
    double widthZoom() const;

    const Theme& theme_;
    std::shared_ptr<PrintedPages> pages_;
    double zoom_ = 1;
    bool fitsWidth_ = true;
    QHBoxLayout* head_;
    QComboBox* paper_;
    QLabel *trouble_, *page_;
    QScrollArea* scroll_;
};

// Where the site's people think in inches they print on Letter, unless another paper was preferred.
PaperSize usualPaper(bool inches);
void preferPaper(std::optional<PaperSize> paper);  // for the whole program

}  // namespace fettle
