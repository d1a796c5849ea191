#include "desktop/widgets/limb_view.hpp"

#include <algorithm>

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/picture/limb_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/told_text.hpp"

namespace sparewell::desktop {

LimbView::LimbView(wxWindow* parent, int word_lines, int width) : wxPanel{parent} {
  chart_ = new ChartView{this, say("Circumference over time, drawn")};
  chart_->set_least_height(word_lines > 6 ? 16 : 9);
  told_ = told_text(this, said("Fit and trend in words"), word_lines, width);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(chart_, wxSizerFlags{3}.Expand());
  sizer->Add(told_, wxSizerFlags{2}.Expand().Border(wxTOP, FromDIP(8)));
  SetSizer(sizer);
}

void LimbView::show(const desk::FitShown& shown) {
  shown_ = shown;
  told_->ChangeValue(to_wx(shown_.words));
}

void LimbView::choose(int curve) {
  const auto chosen = static_cast<std::size_t>(std::max(0, curve));
  chart_->show(desk::limb_picture(
      chosen < shown_.curves.size() ? std::optional{shown_.curves[chosen]} : std::nullopt,
      shown_.reference));
}

}  // namespace sparewell::desktop
