// Light or dark: as the system says, until the user says otherwise.
type Choice = "system" | "light" | "dark";

class Theme {
  choice = $state<Choice>((localStorage.getItem("theme") as Choice | null) ?? "system");

  apply(): void {
    if (this.choice === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = this.choice;
  }
  get dark(): boolean {
    return this.choice === "dark" || (this.choice === "system" && matchMedia("(prefers-color-scheme: dark)").matches);
  }
  swap(): void {
    this.choice = this.dark ? "light" : "dark";
    localStorage.setItem("theme", this.choice);
    this.apply();
  }
}

export const theme = new Theme();
