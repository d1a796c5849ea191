#include "desktop/dialogs/scan_dialog.hpp"

#include <exception>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <wx/button.h>
#include <wx/datetime.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>
#include <wx/utils.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desk/receiving_words.hpp"
#include "desk/wording.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/scan_field.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
namespace {

/// The sign before an answer, so that it can be told at a glance and without colour.
const char* sign_of(desk::ScanAnswer::Sort sort) {
  switch (sort) {
    case desk::ScanAnswer::Sort::taken:
      return "\u2713";
    case desk::ScanAnswer::Sort::look:
      return "?";
    case desk::ScanAnswer::Sort::refused:
      break;
  }
  return "\u2717";
}

}  // namespace

ScanDialog::ScanDialog(wxWindow* parent, const std::string& title, desk::ScanTray tray,
                       const std::filesystem::path& clinic_file, Book book)
    : wxDialog{parent,        wxID_ANY,
               to_wx(title),  wxDefaultPosition,
               wxDefaultSize, wxDEFAULT_DIALOG_STYLE | wxRESIZE_BORDER},
      tray_{std::move(tray)},
      drafts_{clinic_file},
      book_{std::move(book)},
      table_{desk::ScanTray::columns()} {
  make_controls();
  show_tray();
  SetInitialSize(FromDIP(wxSize{860, 520}));
  CentreOnParent();
  scan_->SetFocus();
  bring_back();
}

void ScanDialog::make_controls() {
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  top->Add(new wxStaticText{this, wxID_ANY, to_wx(said("&Scan"))},
           wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  scan_ = new wxTextCtrl{this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxTE_PROCESS_ENTER};
  keep_separators(*scan_);
  set_accessible_name(*scan_, said("Scan"));
  scan_->SetToolTip(to_wx(said("The label as scanned or typed; Enter takes it")));
  scan_->Bind(wxEVT_TEXT_ENTER, [this](wxCommandEvent&) { scan(); });
  undo_ = new wxButton{this, wxID_ANY, to_wx(said("&Take the last scan back"))};
  undo_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answer(tray_.undo()); });
  top->Add(scan_, wxSizerFlags{1}.CentreVertical().Border(wxRIGHT, FromDIP(8)));
  top->Add(undo_, wxSizerFlags{}.CentreVertical());
  answer_ = new wxTextCtrl{this,
                           wxID_ANY,
                           to_wx(said("Scan the first package.")),
                           wxDefaultPosition,
                           wxDefaultSize,
                           wxTE_MULTILINE | wxTE_READONLY | wxTE_NO_VSCROLL};
  answer_->SetFont(answer_->GetFont().Bold().Larger().Larger());
  answer_->SetMinSize({-1, 4 * answer_->GetCharHeight()});
  set_accessible_name(*answer_, said("What the last scan was"));
  rows_ = new TableView{this, table_, said("Scanned so far"), Pick::none};
  rows_->set_empty_words(said("Nothing is scanned yet."));
  summary_ = new WrappedLabel{this};
  summary_->SetFont(summary_->GetFont().Bold());
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(12));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, inset);
  sizer->Add(answer_, inset);
  sizer->Add(rows_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT | wxTOP, FromDIP(12)));
  sizer->Add(summary_, inset);
  sizer->Add(make_buttons(), wxSizerFlags{}.Expand().Border(wxALL, FromDIP(12)));
  SetSizer(sizer);
  keep_wrapped(*this, {summary_}, FromDIP(28));
}

wxSizer* ScanDialog::make_buttons() {
  auto* buttons = new wxBoxSizer{wxHORIZONTAL};
  auto* by_hand = new wxButton{this, wxID_ANY, to_wx(said("Fill in by &hand..."))};
  by_hand->SetToolTip(to_wx(said("For damaged pieces, or a delivery without labels")));
  by_hand->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
    by_hand_ = true;
    EndModal(wxID_CANCEL);
  });
  discard_ = new wxButton{this, wxID_ANY, to_wx(said("&Discard all scans"))};
  discard_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { answer(tray_.discard_all()); });
  go_ = new wxButton{this, wxID_ANY, to_wx(said("&Book"))};
  go_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { book(); });
  auto* close = new wxButton{this, wxID_CANCEL, to_wx(said("&Close"))};
  close->SetToolTip(to_wx(said("What is not booked is kept for the next time")));
  buttons->Add(by_hand, wxSizerFlags{}.Border(wxRIGHT, FromDIP(8)));
  buttons->Add(discard_);
  buttons->AddStretchSpacer(1);
  buttons->Add(go_, wxSizerFlags{}.Border(wxRIGHT, FromDIP(8)));
  buttons->Add(close);
  return buttons;
}

void ScanDialog::scan() {
  const auto text = scanned_text(*scan_);
  if (!text.empty()) answer(tray_.scan(text));
}

void ScanDialog::answer(const desk::ScanAnswer& answer) {
  answer_->SetValue(to_wx(fmt::format("{} {}", sign_of(answer.sort), answer.sentence)));
  if (answer.sort == desk::ScanAnswer::Sort::refused) wxBell();
  scan_->Clear();
  keep();
  show_tray();
  scan_->SetFocus();
}

void ScanDialog::show_tray() {
  table_.fill(tray_.rows());
  rows_->table_changed();
  summary_->set_text(tray_.summary());
  undo_->Enable(tray_.can_undo());
  discard_->Enable(!tray_.empty());
  go_->Enable(!tray_.empty());
  Layout();
}

void ScanDialog::book() {
  std::vector<std::size_t> done;
  std::string told;
  const auto tell = [&](const std::string& line) {
    told += fmt::format("{}{}", told.empty() ? "" : "\n", line);
  };
  const auto requests = tray_.requests();
  for (std::size_t i = 0; i < requests.size(); ++i) {
    try {
      const auto outcome = book_(requests[i]);
      if (!outcome) {
        tell(outcome.error().sentence);
        continue;
      }
      if (outcome->is_recorded()) {
        done.push_back(i);
        for (const auto& line : desk::receipt_lines(*outcome)) {
          booked_.push_back(line);
          tell(line);
        }
      }
      for (const auto& sentence : desk::finding_sentences(*outcome)) tell(sentence);
    } catch (const std::exception&) {
      tell(desk::describe_failure(std::current_exception()));
      break;
    }
  }
  tray_.booked(done);
  answer({tray_.empty() ? desk::ScanAnswer::Sort::taken : desk::ScanAnswer::Sort::look, told});
}

void ScanDialog::keep() const {
  const auto texts = tray_.texts();
  if (texts.empty()) return drafts_.discard(tray_.key());
  drafts_.keep(tray_.key(), {from_wx(wxDateTime::Now().Format("%Y-%m-%d %H:%M")),
                             {fmt::format("{}", fmt::join(texts, "\n"))}});
}

void ScanDialog::bring_back() {
  const auto draft = drafts_.find(tray_.key(), 1);
  if (!draft) return;
  answer(tray_.bring_back(desk::parts_of_list(draft->answers.front(), "\n"),
                          desk::draft_time(*draft, from_wx(wxDateTime::Now().FormatISODate()))));
}

}  // namespace sparewell::desktop
