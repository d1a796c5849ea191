#include "desktop/widgets/reactions_box.hpp"

#include <wx/sizer.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/picture/worn_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/told_text.hpp"

namespace sparewell::desktop {

ReactionsBox::ReactionsBox(wxWindow* parent, int word_lines, int drawing_lines, int width)
    : wxPanel{parent} {
  chart_ = new ChartView{this, say("What was worn, and reactions, drawn")};
  chart_->grow_with_picture(drawing_lines);
  told_ = told_text(this, said("What the reactions speak for, and the log"), word_lines, width);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(chart_, wxSizerFlags{1}.Expand());
  sizer->Add(told_, wxSizerFlags{1}.Expand().Border(wxTOP, FromDIP(8)));
  SetSizer(sizer);
}

void ReactionsBox::show(const desk::ReactionsView& view) {
  chart_->show(desk::worn_picture(view.chart, view.reference));
  told_->ChangeValue(to_wx(view.text));
}

void ReactionsBox::focus_words() {
  told_->SetFocus();
}

}  // namespace sparewell::desktop
