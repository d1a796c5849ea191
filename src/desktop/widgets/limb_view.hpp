/// How a limb changes, drawn for one height and told in words.
#pragma once

#include <wx/panel.h>

#include "desk/fit_form.hpp"

class wxTextCtrl;

namespace sparewell::desktop {

class ChartView;

class LimbView : public wxPanel {
 public:
  /// The words are at least so many lines high.
  LimbView(wxWindow* parent, int word_lines, int width = 200);

  void show(const desk::FitShown& shown);
  /// Which of FitShown::curves is drawn.
  void choose(int curve);

 private:
  desk::FitShown shown_;
  ChartView* chart_ = nullptr;
  wxTextCtrl* told_ = nullptr;
};

}  // namespace sparewell::desktop
