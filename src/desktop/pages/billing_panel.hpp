/// The page "Billing".
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "clinic/say.hpp"
#include "desk/billing/billing_page.hpp"
#include "desk/commands.hpp"
#include "desktop/pages/page.hpp"

class wxButton;
class wxChoice;
class wxStaticText;
class wxTextCtrl;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

class BillingPanel : public Page {
 public:
  /// `run` does a command; `changed` is called when another finding has been chosen.
  BillingPanel(wxWindow* parent, std::function<void(desk::Command)> run,
               std::function<void()> changed);

  /// Until the books of this day are compared the page shows none.
  void show(const desk::DayPtr& day) override;
  void show_books(const desk::WorklistPtr& items);
  void find() override;
  [[nodiscard]] std::string name() const override { return "billing"; }
  [[nodiscard]] std::string tab() const override { return said("Billing"); }
  [[nodiscard]] std::optional<desk::Printable> printable() const override;

  /// Shows this finding, whatever was asked for before; of "" those that are open.
  void choose(const std::string& finding);
  /// nullptr when none is chosen.
  [[nodiscard]] const billing::WorkItem* chosen() const;
  void allow(const desk::CommandState& state);

 private:
  /// One side of the books: a title over its records.
  struct Side {
    wxStaticText* title = nullptr;
    wxTextCtrl* records = nullptr;
  };

  wxSizer* make_top();
  wxWindow* make_list(wxWindow* parent);
  wxWindow* make_detail(wxWindow* parent);
  Side make_side(wxWindow* parent, wxSizer& row, const std::string& name);
  wxSizer* make_buttons(wxWindow* parent);
  void choices_changed();
  void list_changed();
  void show_finding(const std::string& id);
  static void fill(const Side& side, const desk::SideOfBooks& with);

  std::function<void(desk::Command)> run_;
  std::function<void()> changed_;
  desk::BillingPage page_;
  desk::DayPtr day_;
  FindBox* find_ = nullptr;
  wxChoice* shown_ = nullptr;
  wxChoice* book_ = nullptr;
  WrappedLabel* summary_ = nullptr;
  TableView* list_ = nullptr;
  WrappedLabel* title_ = nullptr;
  WrappedLabel* what_ = nullptr;
  Side ours_;
  Side theirs_;
  WrappedLabel* settling_ = nullptr;
  WrappedLabel* history_ = nullptr;
  std::vector<std::pair<desk::Command, wxButton*>> buttons_;
};

}  // namespace sparewell::desktop
