#include "desktop/widgets/welcome.hpp"

#include <wx/button.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/command_button.hpp"

namespace sparewell::desktop {
namespace {

wxStaticText* make_text(wxWindow* parent, const std::string& words) {
  auto* text = new wxStaticText{parent, wxID_ANY, to_wx(words)};
  text->Wrap(parent->FromDIP(560));
  return text;
}

wxButton* make_button(wxWindow* parent, desk::Command command,
                      const std::function<void(desk::Command)>& run) {
  const auto& spec = desk::command_spec(command);
  auto* button = new wxButton{parent, wxID_ANY, to_wx(spec.label)};
  button->SetToolTip(to_wx(tooltip_words(spec)));
  button->Bind(wxEVT_BUTTON, [run, command](wxCommandEvent&) { run(command); });
  return button;
}

}  // namespace

Welcome::Welcome(wxWindow* parent, std::function<void(desk::Command)> run) : wxPanel{parent} {
  auto* column = new wxBoxSizer{wxVERTICAL};
  const auto step = [&](const std::string& title, const std::string& words) {
    auto* heading = make_text(this, title);
    heading->SetFont(heading->GetFont().Bold());
    column->Add(heading, wxSizerFlags{}.Border(wxTOP, FromDIP(16)));
    column->Add(make_text(this, words), wxSizerFlags{}.Border(wxTOP, FromDIP(4)));
  };
  auto* title = make_text(this, say("No clinic file is open"));
  title->SetFont(title->GetFont().Bold().Larger().Larger());
  column->Add(title);
  step(say("1. Make a clinic file, or open the one you have"),
       say("Everything is kept in this one file on your computer."));
  auto* buttons = new wxBoxSizer{wxHORIZONTAL};
  for (const auto command : {desk::Command::open_file, desk::Command::new_file}) {
    buttons->Add(make_button(this, command, run), wxSizerFlags{}.Border(wxRIGHT, FromDIP(8)));
  }
  column->Add(buttons, wxSizerFlags{}.Border(wxTOP, FromDIP(8)));
  step(say("2. Choose the clinic's own folder of CSV files"),
       say("Items, patients, parts handed out, stock, orders: what you have. "
           "The window leads to it as soon as the new file is there."));
  step(say("3. Look at the dry run, then import"),
       say("It says what would be read, which rows would be refused and why, and what is missing. "
           "Nothing is written before you say so."));
  column->Add(make_button(this, desk::Command::help, run),
              wxSizerFlags{}.Border(wxTOP, FromDIP(16)));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->AddStretchSpacer(1);
  sizer->Add(column, wxSizerFlags{}.Centre());
  sizer->AddStretchSpacer(2);
  SetSizer(sizer);
}

}  // namespace sparewell::desktop
