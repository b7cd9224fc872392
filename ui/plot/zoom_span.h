// Why: zooming and shifting one axis obeys the same few rules everywhere: never beyond what there is, never
// narrower than makes sense, the point under the pointer stays where it is. Plain values, any unit.
#pragma once

namespace fettle {

struct ZoomSpan {
    double least = 0, most = 1;  // what there is
    double narrowest = 1e-9;     // width
    double from = 0, until = 1;  // what is shown

    double width() const { return until - from; }
    bool all() const { return from <= least && until >= most; }
    void setBounds(double low, double high, double narrow);  // shows all
    void show(double low, double high);                      // clipped
    void zoom(double factor, double about);                  // factor < 1: closer
    void pan(double by);
    void showAll() { show(least, most); }
    void bring(double at);  // shifts so that `at` is seen, if it is there at all
};

}  // namespace fettle
