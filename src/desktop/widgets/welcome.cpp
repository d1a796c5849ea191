#include "desktop/widgets/welcome.hpp"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "desktop/text.hpp"

namespace sparewell::desktop {

Welcome::Welcome(wxWindow* parent, std::function<void(desk::Command)> run) : wxPanel{parent} {
  auto* title = new wxStaticText{this, wxID_ANY, "No clinic file is open"};
  title->SetFont(title->GetFont().Bold().Larger().Larger());
  auto* text = new wxStaticText{this, wxID_ANY,
                                "Open the clinic's file, or make a new one and import the clinic's "
                                "folder of CSV files into it."};
  auto* buttons = new wxBoxSizer{wxHORIZONTAL};
  for (const auto command : {desk::Command::open_file, desk::Command::new_file}) {
    const auto& spec = desk::command_spec(command);
    auto* button = new wxButton{this, wxID_ANY, to_wx(spec.label)};
    button->SetToolTip(to_wx(std::string{spec.help} + " (" + std::string{spec.key} + ")"));
    button->Bind(wxEVT_BUTTON, [run, command](wxCommandEvent&) { run(command); });
    buttons->Add(button, wxSizerFlags{}.Border(wxRIGHT, FromDIP(8)));
  }
  auto* column = new wxBoxSizer{wxVERTICAL};
  column->Add(title, wxSizerFlags{}.Border(wxBOTTOM, FromDIP(8)));
  column->Add(text, wxSizerFlags{}.Border(wxBOTTOM, FromDIP(16)));
  column->Add(buttons);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->AddStretchSpacer(1);
  sizer->Add(column, wxSizerFlags{}.Centre());
  sizer->AddStretchSpacer(2);
  SetSizer(sizer);
}

}  // namespace sparewell::desktop
