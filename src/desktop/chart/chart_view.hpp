/// Shows a picture: gone through with the arrow keys, told to screen readers, scrolled where it is
/// higher than its window, copied and printed from its menu.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include <wx/scrolwin.h>

#include "desk/picture/picture.hpp"

namespace sparewell::desktop {

struct Look;

class ChartView : public wxScrolled<wxWindow> {
 public:
  /// `name` is for screen readers, and does not change.
  ChartView(wxWindow* parent, const std::string& name);

  /// Draws this from now on, again whenever the room or the font changes. What was chosen stays
  /// chosen where a stop of its id is drawn. Does not call when_selected.
  void show(picture::Maker make);
  /// Chooses the stop of this id; does not call when_selected.
  void mark(const std::string& stop_id);
  /// "" when nothing is chosen.
  [[nodiscard]] const std::string& selected() const { return chosen_; }
  /// Called when a stop has been chosen with the mouse or the arrow keys.
  void when_selected(std::function<void(const std::string&)> call) {
    selected_call_ = std::move(call);
  }
  /// Called when Enter is pressed on a stop, or it is double-clicked.
  void when_chosen(std::function<void(const std::string&)> call) { chosen_call_ = std::move(call); }
  /// In lines of text, so that larger print gets more room.
  void set_least_height(double lines);
  /// At least as high as the picture, up to so many lines of text; beyond them it scrolls. Its
  /// parent has to be laid out after show.
  void grow_with_picture(double most_lines);
  /// As it is drawn now.
  [[nodiscard]] const picture::Picture& picture() const { return picture_; }
  bool SetFont(const wxFont& font) override;

 private:
  void make_anew();
  void ask_for_height(picture::Room room);
  void paint();
  void on_key(wxKeyEvent& event);
  void on_click(const wxPoint& at);
  void on_double_click(const wxPoint& at);
  void on_move(const wxPoint& at);
  void choose(std::size_t stop);
  void keep_in_sight();
  void say_chosen();
  void show_menu(wxPoint at);
  [[nodiscard]] std::optional<std::size_t> stop_at(const wxPoint& at) const;
  [[nodiscard]] std::optional<std::size_t> chosen_stop() const;
  [[nodiscard]] Look look() const;

  std::string name_;
  picture::Maker make_;
  picture::Picture picture_;
  std::string chosen_;
  double least_lines_ = 0;
  double most_lines_ = 0;
  std::function<void(const std::string&)> selected_call_;
  std::function<void(const std::string&)> chosen_call_;
};

}  // namespace sparewell::desktop
