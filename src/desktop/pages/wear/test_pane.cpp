#include "desktop/pages/wear/test_pane.hpp"

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/picture/score_picture.hpp"
#include "desktop/chart/chart_view.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/scroll_to_focus.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

TestPane::TestPane(wxWindow* parent, desk::WearPage& page,
                   std::function<void(std::optional<Kind>)> chosen)
    : wxScrolledWindow{parent}, page_{page}, chosen_call_{std::move(chosen)} {
  headline_ = new WrappedLabel{this};
  headline_->SetFont(headline_->GetFont().Bold());
  errors_ = new WrappedLabel{this};
  grounds_ = new WrappedLabel{this};
  result_ = make_result();
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(headline_, inset);
  sizer->Add(errors_, inset);
  sizer->Add(grounds_, inset);
  sizer->Add(result_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
  // Large text or a small window: the page scrolls as a whole.
  SetScrollRate(0, FromDIP(10));
  scroll_to_focus(*this);
  keep_wrapped(*this, {headline_, errors_, grounds_}, FromDIP(20));
  test_changed();
}

wxWindow* TestPane::make_result() {
  auto* panel = new wxPanel{this};
  // In the order in which the Tab key goes through them.
  chart_ = new ChartView{panel, say("Test of the forecasts, drawn")};
  chart_->grow_with_picture(40);
  chart_->when_selected([this](const std::string& id) { chosen_call_(desk::kind_of_id(id)); });
  scores_ = new TableView{panel, page_.scores(), said("Test of the forecasts")};
  scores_->set_least_rows(5);
  scores_->when_selected([this](const std::string& id) {
    if (!id.empty()) chosen_call_(desk::kind_of_id(id));
  });
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(chart_, wxSizerFlags{3}.Expand());
  sizer->Add(scores_, wxSizerFlags{2}.Expand().Border(wxTOP, FromDIP(4)));
  panel->SetSizer(sizer);
  return panel;
}

void TestPane::test_changed() {
  const auto chosen = page_.chosen();
  chart_->show(desk::score_picture(page_.drawn()));
  result_->Show(page_.tested());
  scores_->table_changed();
  // The list may have chosen its first row.
  scores_->select(desk::kind_id(chosen));
  kind_changed();
}

void TestPane::kind_changed() {
  const auto id = desk::kind_id(page_.chosen());
  scores_->select(id);
  chart_->mark(id);
  headline_->set_text(page_.headline());
  errors_->set_text(page_.errors());
  grounds_->set_text(page_.grounds());
  FitInside();
  Layout();
}

}  // namespace sparewell::desktop
