#include "desktop/widgets/note_bar.hpp"

#include <wx/button.h>
#include <wx/settings.h>
#include <wx/sizer.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {

NoteBar::NoteBar(wxWindow* parent)
    : wxPanel{parent, wxID_ANY, wxDefaultPosition, wxDefaultSize,
              wxTAB_TRAVERSAL | wxBORDER_THEME} {
  text_ = new WrappedLabel{this};
  buttons_ = new wxBoxSizer{wxHORIZONTAL};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(text_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(buttons_, wxSizerFlags{}.Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  SetSizer(sizer);
  keep_wrapped(*this, {text_}, FromDIP(20));
  Hide();
}

void NoteBar::say(const std::string& text, const std::vector<Action>& actions) {
  buttons_->Clear(true);
  auto all = actions;
  all.push_back({said("P&ut away"), [this] { put_away(); }});
  for (const auto& action : all) {
    auto* button = new wxButton{this, wxID_ANY, to_wx(action.label)};
    // The call may clear the buttons, so it runs after the button's own event is done.
    button->Bind(wxEVT_BUTTON, [this, call = action.call](wxCommandEvent&) { CallAfter(call); });
    buttons_->Add(button, wxSizerFlags{}.Border(wxRIGHT, FromDIP(8)));
  }
  text_->set_text(text);
  set_accessible_name(*this, said("Note"), text);
  Show();
  // The first time gives the text its width, on which its height depends.
  GetParent()->Layout();
  GetParent()->Layout();
}

void NoteBar::put_away() {
  Hide();
  GetParent()->Layout();
}

}  // namespace sparewell::desktop
