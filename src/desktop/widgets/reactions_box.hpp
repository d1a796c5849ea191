/// A patient's skin reactions beside what was worn, and what they speak for.
#pragma once

#include <wx/panel.h>

#include "desk/reaction_form.hpp"

class wxTextCtrl;

namespace sparewell::desktop {

class ChartView;

class ReactionsBox : public wxPanel {
 public:
  /// The words are at least so many lines high; of the drawing so many lines are seen at once.
  ReactionsBox(wxWindow* parent, int word_lines, int drawing_lines, int width = 200);

  void show(const desk::ReactionsView& view);
  void focus_words();

 private:
  ChartView* chart_ = nullptr;
  wxTextCtrl* told_ = nullptr;
};

}  // namespace sparewell::desktop
