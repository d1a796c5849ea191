/// Paints the result of a test of the forecasts; every figure comes from desk::draw_scores.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include <wx/window.h>

#include "desk/backtest_chart.hpp"
#include "desk/flow.hpp"

class wxGraphicsContext;

namespace sparewell::desktop {

struct StripColours;

class ScoreChart : public wxWindow {
 public:
  explicit ScoreChart(wxWindow* parent);

  /// Asks for the height that all entries need; its parent then has to be laid out.
  void show(std::vector<desk::ScoreEntry> entries);
  /// Marks the row of this id; does not call when_selected.
  void mark(const std::string& id);
  void when_selected(std::function<void(const std::string&)> call) {
    selected_call_ = std::move(call);
  }

 private:
  [[nodiscard]] desk::ChartMeasures measures() const;
  [[nodiscard]] int least_row_height() const;
  [[nodiscard]] int axis_height() const;
  void lay_out();
  void paint();
  void paint_axes(wxGraphicsContext& graphics, const StripColours& colours) const;
  void paint_row(wxGraphicsContext& graphics, const StripColours& colours,
                 const desk::ScoreShape& row) const;
  void paint_text(wxGraphicsContext& graphics, const std::string& text, double middle,
                  double top) const;
  void on_move(const wxPoint& at);
  void step(int by);
  void choose(std::size_t entry);
  [[nodiscard]] std::optional<std::size_t> entry_at(const wxPoint& at) const;
  [[nodiscard]] std::optional<std::size_t> marked_entry() const;

  std::vector<desk::ScoreEntry> entries_;
  desk::BacktestDrawing drawing_;
  std::string marked_;
  std::function<void(const std::string&)> selected_call_;
};

/// The key to the drawing; breaks into as many lines as its width needs.
class ScoreLegend : public wxWindow {
 public:
  explicit ScoreLegend(wxWindow* parent);
  /// The Tab key passes it by; it holds nothing to work with.
  bool AcceptsFocus() const override { return false; }

 private:
  void lay_out();
  void paint();

  std::vector<desk::FlowPlace> places_;
};

}  // namespace sparewell::desktop
