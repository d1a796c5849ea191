#include "desktop/pages/plan/suppliers_pane.hpp"

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desktop/widgets/headings.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

SuppliersPane::SuppliersPane(wxWindow* parent,
                             std::function<void(const desk::SuppliersPage::OrderOf&)> go_to)
    : wxPanel{parent} {
  summary_ = new WrappedLabel{this};
  summary_->SetFont(summary_->GetFont().Bold());
  // In the order in which the Tab key goes through them.
  suppliers_ = new TableView{this, page_.suppliers(), said("Suppliers")};
  suppliers_->set_empty_words(said("No orders are recorded yet."));
  suppliers_->set_least_rows(4);
  words_ = new WrappedLabel{this};
  lines_ = new TableView{this, page_.lines(), said("Still to come from this supplier"), Pick::none};
  lines_->set_empty_words(said("Nothing is still to come from this supplier."));
  lines_->when_chosen([this, go_to = std::move(go_to)](const std::string& id) {
    if (const auto order = page_.order_of(id)) go_to(*order);
  });
  suppliers_->when_selected([this](const std::string& id) { choose(id); });
  auto* grounds = new WrappedLabel{this, desk::SuppliersPage::grounds()};
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  const auto list = wxSizerFlags{2}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(summary_, inset);
  sizer->Add(suppliers_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(words_, inset);
  sizer->Add(section_heading(this, said("Still to come from it (Enter shows the order)")), inset);
  sizer->Add(lines_, list);
  sizer->Add(grounds, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {summary_, words_, grounds}, FromDIP(20));
}

void SuppliersPane::show(const desk::DayPtr& day) {
  page_.show(day);
  summary_->set_text(page_.summary());
  suppliers_->table_changed();
  Layout();
}

void SuppliersPane::choose(const std::string& supplier) {
  page_.choose(supplier);
  words_->set_text(page_.words());
  lines_->table_changed();
  Layout();
}

void SuppliersPane::focus_rows() {
  suppliers_->focus_rows();
}

}  // namespace sparewell::desktop
