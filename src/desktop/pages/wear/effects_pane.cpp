#include "desktop/pages/wear/effects_pane.hpp"

#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desk/effect_words.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

EffectsPane::EffectsPane(wxWindow* parent, desk::WearPage& page) : wxPanel{parent} {
  auto* introduction = new WrappedLabel{this, desk::effects_introduction()};
  effects_ = new TableView{this, page.effects(), said("What changes lives"), Pick::none};
  effects_->set_empty_words(said("Nothing is known about this kind."));
  auto* caution = new WrappedLabel{this, desk::effect_caution()};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(introduction, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(8)));
  sizer->Add(effects_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(caution, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {introduction, caution}, FromDIP(20));
}

void EffectsPane::changed() {
  effects_->table_changed();
}

}  // namespace sparewell::desktop
