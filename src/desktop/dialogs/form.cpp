#include "desktop/dialogs/form.hpp"

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/clntdata.h>
#include <wx/combobox.h>
#include <wx/filepicker.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"

namespace sparewell::desktop {
namespace {

std::string without_mnemonic(std::string label) {
  std::erase(label, '&');
  return label;
}

}  // namespace

Form::Form(wxWindow* parent, const std::string& title, const std::string& intro, int across)
    : wxDialog{parent,        wxID_ANY,
               to_wx(title),  wxDefaultPosition,
               wxDefaultSize, wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER},
      across_{across} {
  column_ = new wxBoxSizer{wxVERTICAL};
  if (!intro.empty()) {
    auto* text = new wxStaticText{this, wxID_ANY, to_wx(intro)};
    text->Wrap(FromDIP(across > 1 ? 720 : 520));
    column_->Add(text, wxSizerFlags{}.Border(wxALL, FromDIP(12)));
  }
  fields_ = new wxFlexGridSizer{2 * across, FromDIP(8), FromDIP(12)};
  for (int i = 0; i < across; ++i) fields_->AddGrowableCol(static_cast<std::size_t>(2 * i + 1), 1);
  column_->Add(fields_, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(12)));
}

void Form::add_field(const std::string& label, wxStaticText* text, wxWindow* field,
                     const std::string& help) {
  fields_->Add(text, wxSizerFlags{}.CentreVertical());
  fields_->Add(field, wxSizerFlags{}.Expand());
  field->SetToolTip(to_wx(help));
  set_accessible_name(*field, without_mnemonic(label), help);
}

wxTextCtrl* Form::add_text(const std::string& label, const std::string& value,
                           const std::string& help, int lines) {
  // A field answers to the mnemonic of the label that was made just before it.
  auto* text = new wxStaticText{this, wxID_ANY, to_wx(label)};
  auto* field = new wxTextCtrl{this,          wxID_ANY,
                               to_wx(value),  wxDefaultPosition,
                               wxDefaultSize, lines > 1 ? wxTE_MULTILINE : 0L};
  const int height = lines > 1 ? lines * GetCharHeight() + FromDIP(12) : -1;
  field->SetMinSize({FromDIP(across_ > 1 ? 220 : 340), height});
  add_field(label, text, field, help);
  return field;
}

wxChoice* Form::add_choice(const std::string& label, const std::vector<std::string>& choices,
                           int chosen, const std::string& help) {
  auto* text = new wxStaticText{this, wxID_ANY, to_wx(label)};
  auto* field = new wxChoice{this, wxID_ANY};
  for (const auto& choice : choices) field->Append(to_wx(choice));
  field->SetSelection(chosen);
  add_field(label, text, field, help);
  return field;
}

wxChoice* Form::add_closed(const std::string& label, const std::vector<std::string>& choices,
                           int chosen, const std::string& help) {
  auto* field = add_choice(label, {}, wxNOT_FOUND, help);
  for (const auto& choice : choices) {
    field->Append(to_wx(said(choice.c_str())), new wxStringClientData{to_wx(choice)});
  }
  field->SetSelection(chosen);
  return field;
}

wxComboBox* Form::add_combo(const std::string& label, const std::vector<std::string>& choices,
                            const std::string& value, const std::string& help) {
  auto* text = new wxStaticText{this, wxID_ANY, to_wx(label)};
  auto* field = new wxComboBox{this, wxID_ANY, to_wx(value)};
  for (const auto& choice : choices) field->Append(to_wx(choice));
  field->SetValue(to_wx(value));
  add_field(label, text, field, help);
  return field;
}

wxDirPickerCtrl* Form::add_folder(const std::string& label, const std::string& folder,
                                  const std::string& help) {
  auto* text = new wxStaticText{this, wxID_ANY, to_wx(label)};
  auto* field = new wxDirPickerCtrl{this,
                                    wxID_ANY,
                                    to_wx(folder),
                                    to_wx(help),
                                    wxDefaultPosition,
                                    wxDefaultSize,
                                    wxDIRP_USE_TEXTCTRL | wxDIRP_SMALL};
  // The picker itself shows nothing of a folder that is yet to be made.
  field->GetTextCtrl()->ChangeValue(to_wx(folder));
  field->SetMinSize({FromDIP(420), -1});
  add_field(label, text, field, help);
  set_accessible_name(*field->GetTextCtrl(), without_mnemonic(label), help);
  return field;
}

void Form::add_wide(wxWindow* control, int proportion) {
  column_->Add(control,
               wxSizerFlags{proportion}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(12)));
}

wxButton* Form::add_action(const std::string& label, std::function<void()> act) {
  auto* button = new wxButton{this, wxID_ANY, to_wx(label)};
  button->Bind(wxEVT_BUTTON, [act = std::move(act)](wxCommandEvent&) { act(); });
  return actions_.emplace_back(button);
}

void Form::finish(const std::string& go, bool with_cancel) {
  auto* buttons = new wxStdDialogButtonSizer;
  auto* ok = new wxButton{this, with_cancel ? wxID_OK : wxID_CANCEL, to_wx(go)};
  if (with_cancel) {
    buttons->SetAffirmativeButton(ok);
    buttons->AddButton(new wxButton{this, wxID_CANCEL});
  } else {
    buttons->SetCancelButton(ok);
  }
  buttons->Realize();
  ok->SetDefault();
  auto* row = new wxBoxSizer{wxHORIZONTAL};
  for (auto* action : actions_) row->Add(action, wxSizerFlags{}.CentreVertical());
  row->Add(buttons, wxSizerFlags{1}.Expand());
  column_->Add(row, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(12)));
  if (fields_->IsEmpty()) column_->Detach(fields_);
  SetSizerAndFit(column_);
  CentreOnParent();
}

}  // namespace sparewell::desktop
