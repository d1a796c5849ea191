#include "desktop/dialogs/claim_file_dialog.hpp"

#include <array>

#include <fmt/format.h>
#include <wx/button.h>
#include <wx/choice.h>
#include <wx/combobox.h>
#include <wx/textctrl.h>

#include "clinic/say.hpp"
#include "desk/billing/billing_jobs.hpp"
#include "desk/billing/claim_file_words.hpp"
#include "desk/billing/table_mapping.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/aside.hpp"

namespace sparewell::desktop {
namespace {

constexpr std::array<char, 3> separators{',', ';', '\t'};

std::string title_of(desk::BillingFileKind kind) {
  return kind == desk::BillingFileKind::claims ? said("Read claims") : said("Read payments");
}

}  // namespace

ClaimFileDialog::ClaimFileDialog(wxWindow* parent, desk::BillingFileRequest request,
                                 const std::vector<std::string>& saved, Look look)
    : Form{parent, title_of(request.kind),
           say("{}: nothing is written before you take it over.",
               request.file.filename().string())},
      request_{std::move(request)},
      look_{std::move(look)} {
  if (!desk::is_x12_file(request_.file)) add_table_fields(saved);
  told_ = new wxTextCtrl{this,
                         wxID_ANY,
                         "",
                         wxDefaultPosition,
                         FromDIP(wxSize{760, 260}),
                         wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  set_accessible_name(*told_, said("What the file holds"));
  add_wide(told_, 1);
  if (mapping_ != nullptr) add_action(said("&Look again"), [this] { this->look(); });
  finish(said("&Take over"));
  Bind(
      wxEVT_BUTTON,
      [this](wxCommandEvent& event) {
        take_fields();
        event.Skip();
      },
      wxID_OK);
  this->look();
}

void ClaimFileDialog::add_table_fields(const std::vector<std::string>& saved) {
  mapping_ = add_combo(
      said("&Saved mapping"), saved, "",
      said("By which the columns are read; empty: by the columns below, or by our own names"));
  columns_ = add_text(said("&Columns"), "",
                      said("Such as service_date=Date of service; code=Procedure"), 2);
  dates_ = add_text(said("&Dates"), "",
                    said("How the table writes them, such as MM/DD/YYYY; empty: 2026-11-25"));
  decimal_ = add_choice(said("D&ecimal sign"), {said("point  ."), said("comma  ,")}, 0,
                        said("What stands before the decimals of a number written as text"));
  separator_ = add_choice(said("Separa&tor"), {said("comma  ,"), said("semicolon  ;"), said("tab")},
                          0, said("What stands between the columns of CSV text"));
  save_as_ =
      add_text(said("&Keep columns as"), "", said("A name, so that the next file is read alike"));
}

void ClaimFileDialog::take_fields() {
  if (mapping_ == nullptr) return;
  request_.mapping = from_wx(mapping_->GetValue());
  request_.columns = from_wx(columns_->GetValue());
  request_.date_pattern = from_wx(dates_->GetValue());
  request_.decimal_sign.assign(1, decimal_->GetSelection() == 0 ? '.' : ',');
  request_.separator = separators.at(static_cast<std::size_t>(separator_->GetSelection()));
  request_.save_as = from_wx(save_as_->GetValue());
}

void ClaimFileDialog::tell_refusal(const std::string& sentence) {
  const bool unnamed = mapping_ != nullptr && request_.mapping.empty() && request_.columns.empty();
  const auto columns = unnamed ? desk::suggested_columns(request_) : std::string{};
  if (columns.empty()) return told_->ChangeValue(to_wx(sentence));
  columns_->ChangeValue(to_wx(columns));
  told_->ChangeValue(
      said("The headings suggest the columns above. Correct them where they are wrong, say how "
           "dates and decimals are written, and look again."));
}

void ClaimFileDialog::look() {
  take_fields();
  auto request = request_;
  request.dry_run = true;
  const auto outcome = aside([this, &request] { return look_(request); });
  FindWindow(wxID_OK)->Enable(outcome.has_value());
  if (!outcome) return tell_refusal(outcome.error().sentence);
  std::string text;
  for (const auto& line : desk::claim_file_lines(*outcome)) text += fmt::format("{}\n", line);
  for (const auto& line : desk::claim_file_problems(*outcome)) text += fmt::format("{}\n", line);
  told_->ChangeValue(to_wx(text));
}

}  // namespace sparewell::desktop
