#include "desktop/pages/billing_panel.hpp"

#include <wx/button.h>
#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/stattext.h>
#include <wx/textctrl.h>
#include <wx/wrapsizer.h>

#include "clinic/say.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/command_button.hpp"
#include "desktop/widgets/find_box.hpp"
#include "desktop/widgets/layout_memory.hpp"
#include "desktop/widgets/split.hpp"
#include "desktop/widgets/table_view.hpp"
#include "desktop/widgets/wrapped_label.hpp"

namespace sparewell::desktop {
namespace {

wxChoice* make_choice(wxWindow* parent, const std::vector<std::string>& choices,
                      const std::string& name) {
  auto* choice = new wxChoice{parent, wxID_ANY};
  for (const auto& each : choices) choice->Append(to_wx(each));
  choice->SetSelection(0);
  set_accessible_name(*choice, name);
  return choice;
}

}  // namespace

BillingPanel::BillingPanel(wxWindow* parent, std::function<void(desk::Command)> run,
                           std::function<void()> changed)
    : Page{parent}, run_{std::move(run)}, changed_{std::move(changed)} {
  auto* top = make_top();
  summary_ = new WrappedLabel{this};
  auto* split = make_split(this);
  // In the order in which the Tab key goes through them.
  auto* list = make_list(split);
  auto* detail = make_detail(split);
  split->SplitVertically(list, detail);
  share_room(*split, 0.58, "Billing");
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(top, wxSizerFlags{}.Expand().Border(wxALL, FromDIP(8)));
  sizer->Add(summary_, wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8)));
  sizer->Add(split, wxSizerFlags{1}.Expand());
  SetSizer(sizer);
  keep_wrapped(*this, {summary_}, FromDIP(20));
}

wxSizer* BillingPanel::make_top() {
  find_ = new FindBox{this, said("Patient, claim, order, code or item"), said("Find a finding"),
                      [this](const std::string& typed) {
                        page_.table().find(typed);
                        list_changed();
                      }};
  auto* shown_label = new wxStaticText{this, wxID_ANY, said("S&tate:")};
  shown_ = make_choice(this, desk::BillingPage::shown_choices(), said("Which findings are shown"));
  auto* book_label = new wxStaticText{this, wxID_ANY, said("Betw&een:")};
  book_ = make_choice(this, desk::BillingPage::book_choices(), said("Between which books"));
  for (auto* choice : {shown_, book_}) {
    choice->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { choices_changed(); });
  }
  remember_filter(*shown_, "State of findings");
  remember_filter(*book_, "Books of findings");
  auto* compare = command_button(this, desk::Command::compare_books, run_);
  buttons_.emplace_back(desk::Command::compare_books, compare);
  auto* top = new wxBoxSizer{wxHORIZONTAL};
  const auto gap = wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(8));
  top->Add(find_, wxSizerFlags{}.CentreVertical().Border(wxRIGHT, FromDIP(12)));
  top->Add(shown_label, gap);
  top->Add(shown_, gap);
  top->Add(book_label, gap);
  top->Add(book_, gap);
  top->AddStretchSpacer();
  top->Add(compare, wxSizerFlags{}.CentreVertical());
  return top;
}

wxWindow* BillingPanel::make_list(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  list_ = new TableView{panel, page_.table(), said("Findings of billing")};
  list_->set_empty_words(page_.empty_words());
  list_->when_selected([this](const std::string& id) { show_finding(id); });
  list_->when_chosen([this](const std::string&) { run_(desk::Command::answer_finding); });
  find_->goes_down_to(*list_);
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(list_, wxSizerFlags{1}.Expand().Border(wxLEFT | wxBOTTOM, FromDIP(8)));
  panel->SetSizer(sizer);
  return panel;
}

BillingPanel::Side BillingPanel::make_side(wxWindow* parent, wxSizer& row,
                                           const std::string& name) {
  Side side;
  side.title = new wxStaticText{parent, wxID_ANY, ""};
  side.title->SetFont(side.title->GetFont().Bold());
  side.records = new wxTextCtrl{parent,
                                wxID_ANY,
                                "",
                                wxDefaultPosition,
                                wxDefaultSize,
                                wxTE_MULTILINE | wxTE_READONLY | wxTE_BESTWRAP};
  side.records->SetMinSize(FromDIP(wxSize{120, 110}));
  set_accessible_name(*side.records, name);
  auto* column = new wxBoxSizer{wxVERTICAL};
  column->Add(side.title, wxSizerFlags{}.Border(wxBOTTOM, FromDIP(4)));
  column->Add(side.records, wxSizerFlags{1}.Expand());
  row.Add(column, wxSizerFlags{1}.Expand().Border(wxLEFT | wxRIGHT, FromDIP(8)));
  return side;
}

wxWindow* BillingPanel::make_detail(wxWindow* parent) {
  auto* panel = new wxPanel{parent};
  title_ = new WrappedLabel{panel};
  title_->SetFont(title_->GetFont().Bold());
  what_ = new WrappedLabel{panel};
  auto* sides = new wxBoxSizer{wxHORIZONTAL};
  ours_ = make_side(panel, *sides, said("Our side of the finding"));
  theirs_ = make_side(panel, *sides, said("The other side of the finding"));
  settling_ = new WrappedLabel{panel};
  history_ = new WrappedLabel{panel};
  const auto inset = wxSizerFlags{}.Expand().Border(wxLEFT | wxRIGHT | wxBOTTOM, FromDIP(8));
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(title_, inset);
  sizer->Add(what_, inset);
  sizer->Add(sides, wxSizerFlags{1}.Expand().Border(wxBOTTOM, FromDIP(8)));
  sizer->Add(settling_, inset);
  sizer->Add(history_, inset);
  sizer->Add(make_buttons(panel), wxSizerFlags{}.Expand().Border(wxALL, FromDIP(4)));
  panel->SetSizer(sizer);
  keep_wrapped(*panel, {title_, what_, settling_, history_}, FromDIP(20));
  return panel;
}

wxSizer* BillingPanel::make_buttons(wxWindow* parent) {
  auto* row = new wxWrapSizer{wxHORIZONTAL, wxREMOVE_LEADING_SPACES};
  using desk::Command;
  for (const auto command :
       {Command::answer_finding, Command::finding_patient, Command::note_paper}) {
    auto* button = command_button(parent, command, run_);
    row->Add(button, wxSizerFlags{}.Border(wxALL, FromDIP(4)));
    buttons_.emplace_back(command, button);
  }
  return row;
}

void BillingPanel::choose(const std::string& finding) {
  if (finding.empty() || !page_.table().position_of(finding)) {
    find_->Clear();
    const auto* item = page_.item(finding);
    const bool open = item == nullptr || item->state == billing::WorkState::open;
    shown_->SetSelection(
        static_cast<int>(open ? desk::BillingPage::Shown::open : desk::BillingPage::Shown::all));
    book_->SetSelection(0);
    choices_changed();
  }
  list_->select(finding);
  list_->focus_rows();
}

const billing::WorkItem* BillingPanel::chosen() const {
  return page_.item(list_->selected());
}

void BillingPanel::allow(const desk::CommandState& state) {
  for (const auto& [command, button] : buttons_) {
    button->Enable(desk::command_spec(command).enabled(state));
  }
}

void BillingPanel::choices_changed() {
  std::optional<billing::Book> book;
  if (book_->GetSelection() > 0) book = static_cast<billing::Book>(book_->GetSelection() - 1);
  page_.show_only(static_cast<desk::BillingPage::Shown>(shown_->GetSelection()), book);
  list_changed();
}

void BillingPanel::list_changed() {
  list_->set_empty_words(page_.empty_words());
  list_->table_changed();
}

void BillingPanel::show(const desk::DayPtr& day) {
  day_ = day;
  show_books(nullptr);
}

void BillingPanel::show_books(const desk::WorklistPtr& items) {
  page_.show(day_, items);
  summary_->set_text(page_.summary());
  Layout();
  list_changed();
}

void BillingPanel::fill(const Side& side, const desk::SideOfBooks& with) {
  side.title->SetLabelText(to_wx(with.title));
  std::string text;
  for (const auto& line : with.lines) {
    if (!text.empty()) text += "\n\n";
    text += line;
  }
  side.records->ChangeValue(to_wx(text.empty() ? with.empty : text));
}

void BillingPanel::show_finding(const std::string& id) {
  const auto detail = page_.detail(id);
  title_->set_text(detail.title);
  what_->set_text(detail.what);
  fill(ours_, detail.sides.ours);
  fill(theirs_, detail.sides.theirs);
  settling_->set_text(detail.settling);
  history_->set_text(detail.history);
  title_->GetParent()->Layout();
  changed_();
}

void BillingPanel::find() {
  find_->take_focus();
}

}  // namespace sparewell::desktop
